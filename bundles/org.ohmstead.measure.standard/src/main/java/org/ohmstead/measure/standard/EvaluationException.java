// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

/** A step whose recordings cannot be made into a reading. The message says what happened, to which file or step, and what to do. */
public final class EvaluationException extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * Makes an exception.
     *
     * @param message whole sentences for the technician
     */
    public EvaluationException(String message) {
        super(message);
    }

    /**
     * Makes an exception.
     *
     * @param message whole sentences for the technician
     * @param cause what it comes from
     */
    public EvaluationException(String message, Throwable cause) {
        super(message, cause);
    }
}
