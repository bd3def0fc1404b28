// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

/** Something outside a word's own matter failed. The message says what happened, to what, and what to do. */
final class OutsideException extends Exception {
    private static final long serialVersionUID = 1L;

    OutsideException(String message) {
        super(message);
    }
}
