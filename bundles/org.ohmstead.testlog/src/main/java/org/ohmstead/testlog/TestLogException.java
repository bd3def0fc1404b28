// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import org.ohmstead.testlog.internal.LogFailures;

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

    /**
     * Returns whether the disk, the system or another program caused it (no room, no right to write, log busy), and not what was asked
     * for or what the log holds.
     */
    public boolean causedOutside() {
        Throwable cause = getCause();
        return cause instanceof SQLException failure
                ? LogFailures.meansOutside(failure)
                : cause instanceof IOException && !(cause instanceof NoSuchFileException);
    }
}
