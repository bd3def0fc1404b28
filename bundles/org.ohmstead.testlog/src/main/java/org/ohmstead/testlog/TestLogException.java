// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

/**
 * The test log could not be opened, read or added to. The message is a whole sentence for the person at the bench: what happened, to
 * which file or entry, and what to do.
 */
public final class TestLogException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes a failure that the log found by itself. */
    public TestLogException(String sentence) {
        super(sentence);
    }

    /** Makes a failure that something else caused. */
    public TestLogException(String sentence, Throwable cause) {
        super(sentence, cause);
    }
}
