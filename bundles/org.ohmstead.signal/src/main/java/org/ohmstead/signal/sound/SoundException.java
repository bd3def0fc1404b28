// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

/** A recording of sound that cannot be used; the message says what is wrong with it and what to do, in whole sentences. */
public final class SoundException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Makes one with its message. */
    public SoundException(String message) {
        super(message);
    }
}
