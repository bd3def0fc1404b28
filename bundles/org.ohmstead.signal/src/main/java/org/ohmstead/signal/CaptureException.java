// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** Says, in a whole sentence for a technician, why a capture cannot be read, written or analysed and what to do. */
public final class CaptureException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes an exception with a message of whole sentences: what happened, to what, and what to do. */
    public CaptureException(String message) {
        super(message);
    }

    /** Makes an exception with a message of whole sentences and the failure that caused it. */
    public CaptureException(String message, Throwable cause) {
        super(message, cause);
    }
}
