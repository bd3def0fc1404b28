// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

/** The lab's memory cannot answer. The message says what is wrong, with what, and what to do. */
public final class HistoryException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes one. */
    public HistoryException(String message) {
        super(message);
    }

    /** Makes one that something else caused. */
    public HistoryException(String message, Throwable cause) {
        super(message, cause);
    }
}
