// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/** Which channels of a file or a sound card carry the signal. */
public enum ChannelUse {
    /** One channel. */
    MONO(1),
    /** Both channels, the same. */
    BOTH(2),
    /** Two channels, the signal in the first and silence in the second. */
    LEFT(2),
    /** Two channels, silence in the first and the signal in the second. */
    RIGHT(2),
    /** Both channels, the second with its polarity inverted, as some bridged amplifiers want it. */
    RIGHT_INVERTED(2);

    private final int count;

    ChannelUse(int count) {
        this.count = count;
    }

    /** Returns the number of channels, 1 or 2. */
    public int count() {
        return count;
    }

    /** Returns the factor of one channel: 1, 0 or -1. */
    double factor(int channel) {
        return switch (this) {
            case MONO, BOTH -> 1;
            case LEFT -> channel == 0 ? 1 : 0;
            case RIGHT -> channel == 1 ? 1 : 0;
            case RIGHT_INVERTED -> channel == 0 ? 1 : -1;
        };
    }
}
