// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import org.ohmstead.units.text.Said;

/** A step whose recordings cannot be made into a reading. The message says what happened, to which file or step, and what to do. */
public final class EvaluationException extends Exception implements Said.Failure {
    private static final long serialVersionUID = 1L;

    private final Said said;

    /**
     * Makes an exception.
     *
     * @param message whole sentences for the technician
     */
    public EvaluationException(String message) {
        this(Said.asIs(message), null);
    }

    /**
     * Makes an exception.
     *
     * @param message whole sentences for the technician
     * @param cause what it comes from
     */
    public EvaluationException(String message, Throwable cause) {
        this(Said.asIs(message), cause);
    }

    /**
     * Makes an exception that a log may keep in English too.
     *
     * @param said whole sentences for the technician
     */
    public EvaluationException(Said said) {
        this(said, null);
    }

    /**
     * Makes an exception that a log may keep in English too.
     *
     * @param said whole sentences for the technician
     * @param cause what it comes from; null when nothing caused it
     */
    public EvaluationException(Said said, Throwable cause) {
        super(said.shown(), cause);
        this.said = said;
    }

    @Override
    public Said said() {
        return said;
    }
}
