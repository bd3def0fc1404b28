// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/** Levels in dBFS as AES17 counts them, and what they are as shares of full scale. */
final class Levels {
    /** The crest factor of a sine, in decibels. */
    static final double SINE_CREST_DB = 10 * Math.log10(2);

    private Levels() {}

    /** The ratio of amplitudes that a level stands for. */
    static double ratio(double db) {
        return Math.pow(10, db / 20);
    }

    static double db(double ratio) {
        return 20 * Math.log10(ratio);
    }

    /** The RMS value, as a share of full scale, that a level stands for. */
    static double rms(double dbfs) {
        return ratio(dbfs) / Math.sqrt(2);
    }
}
