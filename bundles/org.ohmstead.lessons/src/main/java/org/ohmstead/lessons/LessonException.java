// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

/**
 * A description of a lesson, or a value for a control, that cannot be used. The message says what is wrong, where, and what would be
 * right.
 */
public final class LessonException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes one with a whole sentence for a person. */
    public LessonException(String message) {
        super(message);
    }

    /** Makes one with a whole sentence for a person and what led to it. */
    public LessonException(String message, Throwable cause) {
        super(message, cause);
    }
}
