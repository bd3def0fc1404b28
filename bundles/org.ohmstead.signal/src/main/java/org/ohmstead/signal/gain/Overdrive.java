// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import org.ohmstead.units.Decibels;

/**
 * A sine whose tops are cut off on both sides, as an ideal amplifier with stiff rails does beyond clipping. With k the limit over the peak
 * that is asked for and t = asin k, the mean square over the peak's square is (t - sin(2 t) / 2) / pi + k^2 (1 - 2 t / pi), and the
 * fundamental over that peak (2 / pi) (t + k sqrt(1 - k^2)).
 *
 * @param beyondClipDb how far the peak asked for lies beyond the limit, in dB, 0 to 200
 */
public record Overdrive(double beyondClipDb) {
    private static final double MOST_DB = 200;

    /** Checks the range. */
    public Overdrive {
        Checks.within(beyondClipDb, 0, MOST_DB, "beyondClipDb");
    }

    /** Returns the power over that of the sine that just clips: 1, rising to 2 for a square wave. */
    public double powerRatio() {
        double limit = limitRatio();
        return 2 * meanSquare(limit) / (limit * limit);
    }

    /** Returns harmonics over fundamental, 0 to 0.4834. */
    public double thdFRatio() {
        double limit = limitRatio();
        double fundamental = 2 / Math.PI * (Math.asin(limit) + limit * Math.sqrt(1 - limit * limit));
        return Math.sqrt(Math.max(0, 2 * meanSquare(limit) / (fundamental * fundamental) - 1));
    }

    /** Returns the share of time that the wave stands at its limit, 0 to 1. */
    public double flatTimeRatio() {
        return 1 - 2 * Math.asin(limitRatio()) / Math.PI;
    }

    private double limitRatio() {
        return Decibels.toFieldRatio(-beyondClipDb);
    }

    private static double meanSquare(double limit) {
        double theta = Math.asin(limit);
        return (theta - Math.sin(2 * theta) / 2) / Math.PI + limit * limit * (1 - 2 * theta / Math.PI);
    }
}
