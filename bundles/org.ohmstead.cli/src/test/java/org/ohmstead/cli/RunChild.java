// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.ByteArrayInputStream;

/** The command line as a program of its own, which a test can end from outside. */
final class RunChild {
    private RunChild() {}

    /** Runs one command line where nobody can be asked. */
    public static void main(String[] words) {
        ConsoleInput nobody = new ConsoleInput(new ByteArrayInputStream(new byte[0]), false);
        System.exit(Ohmstead.run(words, System.out, System.err, nobody, new BuiltPlugins()));
    }
}
