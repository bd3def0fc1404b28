// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

/** A measurement or a bench that failed. The message says what happened, to what, and what to do, in whole sentences. */
public final class MeasurementException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes an exception with whole sentences for the technician. */
    public MeasurementException(String message) {
        super(message);
    }

    /** Makes an exception with whole sentences for the technician, and where it comes from. */
    public MeasurementException(String message, Throwable cause) {
        super(message, cause);
    }
}
