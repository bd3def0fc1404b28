// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * One harmonic of a tone.
 *
 * @param order 2 or above; its frequency is the order times that of the fundamental
 * @param ratioToFundamental its amplitude divided by that of the fundamental, 0 or above
 * @param phaseDegrees phase above -180 up to 180, of the sine series: with the time origin where the fundamental
 *     crosses zero upwards, the harmonic is sin(n w t + phase)
 */
public record Harmonic(int order, double ratioToFundamental, double phaseDegrees) {
    /** Checks the ranges. */
    public Harmonic {
        if (order < 2) {
            throw new IllegalArgumentException("order must be 2 or above, but is " + order);
        }
        if (!Double.isFinite(ratioToFundamental) || ratioToFundamental < 0) {
            throw new IllegalArgumentException(
                    "ratioToFundamental must be finite and 0 or above, but is " + ratioToFundamental);
        }
        if (!Double.isFinite(phaseDegrees)) {
            throw new IllegalArgumentException("phaseDegrees must be finite, but is " + phaseDegrees);
        }
    }
}
