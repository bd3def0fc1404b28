// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

/** A query could not be understood. The message is a whole sentence that says which part, why, and how it is written. */
public final class FindException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes a failure. */
    public FindException(String sentence) {
        super(sentence);
    }

    FindException(String sentence, Throwable cause) {
        super(sentence, cause);
    }
}
