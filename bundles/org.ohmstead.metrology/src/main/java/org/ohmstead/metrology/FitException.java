// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

/** A fit has no answer with these data: the message says what is wrong with them and what to do. */
public final class FitException extends Exception {

    private static final long serialVersionUID = 1L;

    /** Creates the exception with a message for the user. */
    public FitException(String message) {
        super(message);
    }
}
