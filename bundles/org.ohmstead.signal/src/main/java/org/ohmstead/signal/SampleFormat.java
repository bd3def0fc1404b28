// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** How the samples of a WAV file that is made sample by sample are stored. */
public enum SampleFormat {
    /** Signed integers of 16 bits. */
    INTEGER_16(false, 16),
    /** Signed integers of 24 bits. */
    INTEGER_24(false, 24),
    /** Signed integers of 32 bits. */
    INTEGER_32(false, 32),
    /** Floating-point numbers of 32 bits. */
    FLOAT_32(true, 32);

    private final WavFormat stored;

    SampleFormat(boolean floating, int bits) {
        stored = new WavFormat(floating, bits);
    }

    /** Returns whether the samples are floating-point numbers, which need no dither and know no full scale. */
    public boolean floating() {
        return stored.floating();
    }

    /** Returns the bits of one sample. */
    public int bits() {
        return stored.bits();
    }

    /** Returns the smallest step between two samples as a share of full scale; 0 for floating-point samples. */
    public double step() {
        return floating() ? 0 : 1 / stored.fullScale();
    }

    /** Returns the format as the words of a file's description: "24-bit integer". */
    public String text() {
        return stored.text();
    }

    WavFormat stored() {
        return stored;
    }
}
