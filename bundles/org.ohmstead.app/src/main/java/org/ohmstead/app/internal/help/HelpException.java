// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

/** A help page or the contents could not be read; the message says which and why. */
public final class HelpException extends Exception {
    private static final long serialVersionUID = 1L;

    HelpException(String message, Throwable cause) {
        super(message, cause);
    }

    HelpException(String message) {
        super(message);
    }
}
