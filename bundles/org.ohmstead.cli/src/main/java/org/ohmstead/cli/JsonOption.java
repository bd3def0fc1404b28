// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Option;

/** The option of words whose results machines may want. */
final class JsonOption {
    @Option(names = "--json", descriptionKey = "json.json")
    private boolean json;

    boolean wanted() {
        return json;
    }
}
