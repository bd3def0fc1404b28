// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import org.ohmstead.units.text.Said;

/** A recording of sound that cannot be used; the message says what is wrong with it and what to do, in whole sentences. */
public final class SoundException extends Exception implements Said.Failure {
    private static final long serialVersionUID = 1L;

    private final Said said;

    /** Makes one with its message. */
    public SoundException(String message) {
        this(Said.asIs(message));
    }

    /** Makes one that a log may keep in English too. */
    public SoundException(Said said) {
        super(said.shown());
        this.said = said;
    }

    @Override
    public Said said() {
        return said;
    }
}
