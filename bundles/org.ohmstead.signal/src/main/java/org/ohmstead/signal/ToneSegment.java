// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * What one segment of a long record shows of the tone.
 *
 * @param centre instant of its middle in samples from the beginning of the record
 * @param radiansPerSample frequency
 * @param phaseRadians phase of the fundamental, as a sine, at the middle
 * @param voltsPeak amplitude of the fundamental
 * @param residualSquare mean square of what is neither direct voltage, fundamental nor harmonic
 * @param present whether the tone is there
 * @param clipping whether its tops are cut off
 */
record ToneSegment(
        double centre,
        double radiansPerSample,
        double phaseRadians,
        double voltsPeak,
        double residualSquare,
        boolean present,
        Clipping clipping) {
    /** A level that changes by more within a segment, about 1 dB, is a step. */
    private static final double STEP_RATIO = 1.12;

    /**
     * Whether a segment is inside a stretch in which the tone runs.
     *
     * @param before the segment before, or null at the beginning
     * @param after the segment behind, or null at the end
     */
    Place placeBetween(ToneSegment before, ToneSegment after) {
        if (!present) {
            return Place.GONE;
        }
        if (before != null && !before.present || after != null && !after.present) {
            return Place.EDGE;
        }
        double first = before == null ? after == null ? voltsPeak : after.voltsPeak : before.voltsPeak;
        double second = after == null ? first : after.voltsPeak;
        double low = Math.min(first, second);
        double high = Math.max(first, second);
        boolean steady = high <= STEP_RATIO * low && voltsPeak <= STEP_RATIO * high && low <= STEP_RATIO * voltsPeak;
        return steady ? Place.STEADY : Place.STEP;
    }

    /** Where a segment lies. */
    enum Place {
        /** The tone runs in it and in its neighbours. */
        STEADY,
        /** The tone begins or ends beside it. */
        EDGE,
        /** The level steps in it, or the tone is broken. */
        STEP,
        /** The tone is not there. */
        GONE
    }
}
