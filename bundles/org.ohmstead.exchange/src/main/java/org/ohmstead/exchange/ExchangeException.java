// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.io.IOException;
import java.io.Serial;
import org.ohmstead.testlog.TestLogException;

/**
 * A file that could not be written, read or taken in. The message is whole sentences for the person at the bench: what happened, to
 * which file or place in it, and what to do.
 */
public final class ExchangeException extends Exception {
    @Serial
    private static final long serialVersionUID = 1L;

    private final boolean outside;

    private ExchangeException(String sentence, Throwable cause, boolean outside) {
        super(sentence, cause);
        this.outside = outside;
    }

    /** Makes a refusal of what a file holds or of what was asked for. */
    public static ExchangeException refused(String sentence) {
        return new ExchangeException(sentence, null, false);
    }

    /** Makes a refusal of what a file holds, found by something else. */
    public static ExchangeException refused(String sentence, Throwable cause) {
        return new ExchangeException(sentence, cause, false);
    }

    /** Makes a failure that the disk or the system caused. */
    public static ExchangeException failed(String sentence, IOException cause) {
        return new ExchangeException(sentence, cause, true);
    }

    /** Makes a failure of the log. */
    public static ExchangeException ofLog(String sentence, TestLogException cause) {
        return new ExchangeException(sentence, cause, cause.causedOutside());
    }

    /** Returns whether the disk or the system caused it (no room, no right to write), and not what a file holds or what was asked for. */
    public boolean causedOutside() {
        return outside;
    }
}
