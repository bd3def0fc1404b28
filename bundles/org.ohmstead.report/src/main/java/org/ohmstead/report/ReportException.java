// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.io.Serial;

/** A sheet or an export that could not be made. The message says what happened, to which file, and what to do. */
public final class ReportException extends Exception {
    @Serial
    private static final long serialVersionUID = 1L;

    /** Makes an exception without a cause; the message is whole sentences for a technician. */
    public ReportException(String message) {
        super(message);
    }

    /**
     * Makes an exception.
     *
     * @param message whole sentences for a technician
     * @param cause what lay behind it
     */
    public ReportException(String message, Throwable cause) {
        super(message, cause);
    }
}
