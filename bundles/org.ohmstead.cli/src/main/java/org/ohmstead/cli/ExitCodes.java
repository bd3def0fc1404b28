// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

/** What the process tells whoever started it. */
final class ExitCodes {
    /** Done. */
    static final int DONE = 0;
    /** Done, but something fell short: a verdict, a check. */
    static final int FELL_SHORT = 1;
    /** Wrong usage. */
    static final int WRONG_USAGE = 2;
    /** Bad input: a file that is broken, missing or from the future. */
    static final int BAD_INPUT = 3;
    /** Something outside failed: disk, permissions, a fault of the program itself. */
    static final int OUTSIDE_FAILURE = 4;

    private ExitCodes() {}
}
