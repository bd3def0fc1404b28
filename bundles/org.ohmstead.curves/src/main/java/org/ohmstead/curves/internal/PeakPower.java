// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

/** Power of a sine whose peak voltage is known. */
public final class PeakPower {

    private PeakPower() {}

    /** Returns V_peak²/(2R) in watts. */
    public static double watts(double peakVolts, double loadOhms) {
        return peakVolts * peakVolts / (2 * loadOhms);
    }

    /**
     * Returns the standard uncertainty of V_peak²/(2R) in watts. For a normally distributed V_peak the variance of its
     * square is exactly 4 V²u² + 2 u⁴; the second term keeps the uncertainty honest near zero.
     */
    public static double standardUncertaintyWatts(double peakVolts, double peakVariance, double loadOhms) {
        double variance = Math.max(0, peakVariance);
        return Math.sqrt(4 * peakVolts * peakVolts * variance + 2 * variance * variance) / (2 * loadOhms);
    }
}
