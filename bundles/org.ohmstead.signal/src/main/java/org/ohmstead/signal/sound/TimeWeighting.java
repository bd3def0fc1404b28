// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

/** The time weightings of IEC 61672-1: exponential averages of the squared pressure. */
public enum TimeWeighting {
    /** F: a time constant of 125 ms. */
    FAST(0.125, "F"),
    /** S: a time constant of 1 s. */
    SLOW(1, "S");

    private final double timeConstantSeconds;
    private final String letter;

    TimeWeighting(double timeConstantSeconds, String letter) {
        this.timeConstantSeconds = timeConstantSeconds;
        this.letter = letter;
    }

    /** Returns the time constant in seconds. */
    public double timeConstantSeconds() {
        return timeConstantSeconds;
    }

    /** Returns the letter that the standard calls it by. */
    public String letter() {
        return letter;
    }
}
