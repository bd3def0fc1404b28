// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

/** What a network is judged by, and what it takes to join it to another one. */
final class Features {
    /** Bound of the relative error of a resistance that doubles were added and divided to: 30 parts, three roundings for each joint. */
    static final double ROUNDING_RATIO = 1e-13;

    double ohms;
    double lowOhms;
    double highOhms;
    double powerWatts;
    double bandRealOhms;
    double bandImaginaryOhms;

    void set(Features other) {
        ohms = other.ohms;
        lowOhms = other.lowOhms;
        highOhms = other.highOhms;
        powerWatts = other.powerWatts;
        bandRealOhms = other.bandRealOhms;
        bandImaginaryOhms = other.bandImaginaryOhms;
    }

    void join(Features other, boolean series) {
        double joined = joinedOhms(ohms, other.ohms, series);
        if (series) {
            // The current is shared, so the smaller of the greatest currents counts; in parallel the smaller of the
            // voltages.
            powerWatts = joined * Math.min(powerWatts / ohms, other.powerWatts / other.ohms);
            lowOhms += other.lowOhms;
            highOhms += other.highOhms;
        } else {
            powerWatts = Math.min(powerWatts * ohms, other.powerWatts * other.ohms) / joined;
            lowOhms = lowOhms == 0 || other.lowOhms == 0 ? 0 : joinedOhms(lowOhms, other.lowOhms, false);
            highOhms = joinedOhms(highOhms, other.highOhms, false);
        }
        ohms = joined;
        joinImpedance(other, series);
    }

    /** Returns the greater deviation of the worst case, relative. */
    double worstCaseRatio() {
        return Math.max(highOhms / ohms - 1, 1 - lowOhms / ohms);
    }

    /** Returns the power at the highest frequency of the band relative to V<sup>2</sup>/R. */
    double bandPowerRatio() {
        double square = bandRealOhms * bandRealOhms + bandImaginaryOhms * bandImaginaryOhms;
        return ohms * bandRealOhms / square;
    }

    static double joinedOhms(double first, double second, boolean series) {
        return series ? first + second : first * second / (first + second);
    }

    private void joinImpedance(Features other, boolean series) {
        double sumReal = bandRealOhms + other.bandRealOhms;
        double sumImaginary = bandImaginaryOhms + other.bandImaginaryOhms;
        if (series) {
            bandRealOhms = sumReal;
            bandImaginaryOhms = sumImaginary;
        } else {
            double productReal = bandRealOhms * other.bandRealOhms - bandImaginaryOhms * other.bandImaginaryOhms;
            double productImaginary = bandRealOhms * other.bandImaginaryOhms + bandImaginaryOhms * other.bandRealOhms;
            double square = sumReal * sumReal + sumImaginary * sumImaginary;
            bandRealOhms = (productReal * sumReal + productImaginary * sumImaginary) / square;
            bandImaginaryOhms = (productImaginary * sumReal - productReal * sumImaginary) / square;
        }
    }
}
