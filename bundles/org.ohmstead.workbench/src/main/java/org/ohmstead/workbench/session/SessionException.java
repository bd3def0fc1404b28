// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

/**
 * Something about the open project's files could not be done. The message is a whole sentence for the person at the bench: what
 * happened, to what, and what to do.
 */
public class SessionException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes a failure that the session found by itself. */
    public SessionException(String sentence) {
        super(sentence);
    }

    /** Makes a failure that something else caused. */
    public SessionException(String sentence, Throwable cause) {
        super(sentence, cause);
    }
}
