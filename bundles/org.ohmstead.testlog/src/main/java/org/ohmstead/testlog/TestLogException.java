// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import org.ohmstead.testlog.internal.LogFailures;
import org.ohmstead.units.text.Said;

/**
 * The test log could not be opened, read or added to. The message is a whole sentence for the person at the bench: what happened, to
 * which file or entry, and what to do.
 */
public final class TestLogException extends Exception implements Said.Failure {
    private static final long serialVersionUID = 1L;

    private final Said said;

    /** Makes a failure that the log found by itself. */
    public TestLogException(String sentence) {
        this(Said.asIs(sentence), null);
    }

    /** Makes a failure that something else caused. */
    public TestLogException(String sentence, Throwable cause) {
        this(Said.asIs(sentence), cause);
    }

    /**
     * Makes a failure that is shown and may be kept in the log too.
     *
     * @param cause null when nothing else caused it
     */
    public TestLogException(Said said, Throwable cause) {
        super(said.shown(), cause);
        this.said = said;
    }

    @Override
    public Said said() {
        return said;
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
