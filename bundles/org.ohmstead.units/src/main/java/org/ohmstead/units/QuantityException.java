// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

/** A text that is not the quantity it should be. The message says why and gives an example that would do. */
public final class QuantityException extends Exception {
    private static final long serialVersionUID = 1L;

    private final Reason reason;
    private final int position;

    /** Why a text was refused. */
    public enum Reason {
        /** Nothing was written. */
        EMPTY,
        /** No number could be read. */
        NO_NUMBER,
        /** Another unit than the one asked for. */
        WRONG_UNIT,
        /** Something stands behind the quantity. */
        TRAILING_TEXT,
        /** More than a double can hold. */
        TOO_LARGE
    }

    QuantityException(Reason reason, int position, String message) {
        super(message);
        this.reason = reason;
        this.position = position;
    }

    /** Returns why the text was refused. */
    public Reason reason() {
        return reason;
    }

    /** Returns the index in the text, from 0, where the trouble begins. */
    public int position() {
        return position;
    }
}
