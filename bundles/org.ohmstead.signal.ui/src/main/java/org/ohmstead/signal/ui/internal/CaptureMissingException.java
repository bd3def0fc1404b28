// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

/** Says, in whole sentences for a technician, why a logged capture cannot be shown and what to do. */
public final class CaptureMissingException extends Exception {
    private static final long serialVersionUID = 1L;

    CaptureMissingException(String message, Throwable cause) {
        super(message, cause);
    }
}
