// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

/** A value that does not fit its setting. The message says which, and what would fit. */
public final class SettingException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes an exception with whole sentences for the user. */
    public SettingException(String message) {
        super(message);
    }

    /** Makes an exception with whole sentences for the user, and where it comes from. */
    public SettingException(String message, Throwable cause) {
        super(message, cause);
    }
}
