// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import org.ohmstead.units.text.Said;

/** Says, in a whole sentence for a technician, why a capture cannot be read, written or analysed and what to do. */
public final class CaptureException extends Exception implements Said.Failure {
    private static final long serialVersionUID = 1L;

    private final Said said;

    /** Makes an exception with a message of whole sentences: what happened, to what, and what to do. */
    public CaptureException(String message) {
        this(Said.asIs(message), null);
    }

    /** Makes an exception with a message of whole sentences and the failure that caused it. */
    public CaptureException(String message, Throwable cause) {
        this(Said.asIs(message), cause);
    }

    /** Makes an exception that a log may keep in English too. */
    public CaptureException(Said said) {
        this(said, null);
    }

    /** Makes an exception that a log may keep in English too; the cause is null where there is none. */
    public CaptureException(Said said, Throwable cause) {
        super(said.shown(), cause);
        this.said = said;
    }

    @Override
    public Said said() {
        return said;
    }
}
