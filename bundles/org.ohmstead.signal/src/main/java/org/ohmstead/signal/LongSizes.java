// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * How a long record is cut up.
 *
 * @param leastSegment samples of a segment at least, a power of two
 * @param mostSegment samples of a segment at most, a power of two
 * @param stretch samples of the stretch in which the tone is looked for
 * @param mostSegments number of segments beyond which they are made longer
 */
record LongSizes(int leastSegment, int mostSegment, int stretch, int mostSegments) {
    /** A segment of 1.4 s at 48 kHz tells hum from a tone and follows the warming of an amplifier. */
    static final LongSizes USUAL = new LongSizes(1 << 16, 1 << 20, 1 << 20, 1 << 14);

    private static final int WANTED_CYCLES = 32;
    /** With fewer the window no longer keeps the tone from its harmonics. */
    private static final int LEAST_CYCLES = 9;

    private static final int LEAST_COUNT = 4;

    /** Samples of a segment for a record and a tone, a power of two; 0 if the tone is too low for any. */
    int segment(long samples, double radiansPerSample) {
        int size = leastSegment;
        while (size < mostSegment
                && (cycles(size, radiansPerSample) < WANTED_CYCLES || 2 * samples / size > mostSegments)) {
            size *= 2;
        }
        while (size > samples / LEAST_COUNT) {
            size /= 2;
        }
        return cycles(size, radiansPerSample) < LEAST_CYCLES ? 0 : size;
    }

    private static double cycles(int size, double radiansPerSample) {
        return size * radiansPerSample / (2 * Math.PI);
    }
}
