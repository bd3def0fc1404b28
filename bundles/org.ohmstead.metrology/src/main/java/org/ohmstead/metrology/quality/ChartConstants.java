// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import org.hipparchus.special.Gamma;
import org.ohmstead.metrology.internal.GaussPanels;
import org.ohmstead.metrology.internal.NormalCurve;

/**
 * The constants that turn the spread of small samples from a normal distribution into its standard deviation and into
 * three-sigma control limits, calculated rather than looked up. With W the range of n standard normal values, d2 is
 * its mean and d3 its standard deviation, found by integration (L. H. C. Tippett, Biometrika 17, 1925); c4 = sqrt(2/(n
 * - 1)) Gamma(n/2)/Gamma((n - 1)/2) is the mean of their sample standard deviation. ISO 7870-2 tables them.
 *
 * @param sampleSize the number of readings n, 2 to 100
 * @param d2 the mean range in standard deviations
 * @param d3 the standard deviation of the range in standard deviations
 * @param c4 the mean sample standard deviation in standard deviations
 */
public record ChartConstants(int sampleSize, double d2, double d3, double c4) {

    private static final int LARGEST_SAMPLE = 100;
    private static final double WIDEST = 9;
    private static final int PANELS = 12;

    /** Checks the sample size and that the constants are greater than 0. */
    public ChartConstants {
        checkSize(sampleSize);
        if (!(d2 > 0 && d3 > 0 && c4 > 0)) {
            throw new IllegalArgumentException(
                    "d2, d3 and c4 are " + d2 + ", " + d3 + " and " + c4 + " but must be greater than zero.");
        }
    }

    /**
     * Returns the constants of a sample size.
     *
     * @param sampleSize 2 to 100
     */
    public static ChartConstants of(int sampleSize) {
        checkSize(sampleSize);
        double mean = GaussPanels.over(
                x -> 1 - Math.pow(NormalCurve.below(x), sampleSize) - Math.pow(NormalCurve.below(-x), sampleSize),
                -WIDEST,
                WIDEST,
                PANELS);
        double halfSquare = GaussPanels.over(w -> w * exceedance(w, sampleSize), 0, 2 * WIDEST, PANELS);
        double c4 = Math.sqrt(2.0 / (sampleSize - 1))
                * Math.exp(Gamma.logGamma(sampleSize / 2.0) - Gamma.logGamma((sampleSize - 1) / 2.0));
        return new ChartConstants(sampleSize, mean, Math.sqrt(2 * halfSquare - mean * mean), c4);
    }

    /** Returns A2 = 3/(d2 sqrt(n)): limits of a chart of means from the mean range. */
    public double a2() {
        return 3 / (d2 * Math.sqrt(sampleSize));
    }

    /** Returns A3 = 3/(c4 sqrt(n)): limits of a chart of means from the mean standard deviation. */
    public double a3() {
        return 3 / (c4 * Math.sqrt(sampleSize));
    }

    /** Returns D3 = 1 - 3 d3/d2 but at least 0: lower limit of a chart of ranges over the mean range. */
    public double lowerRangeFactor() {
        return Math.max(0, 1 - 3 * d3 / d2);
    }

    /** Returns D4 = 1 + 3 d3/d2: upper limit of a chart of ranges over the mean range. */
    public double upperRangeFactor() {
        return 1 + 3 * d3 / d2;
    }

    /** Returns B3 = 1 - 3 sqrt(1 - c4²)/c4 but at least 0: lower limit of a chart of standard deviations. */
    public double lowerDeviationFactor() {
        return Math.max(0, 1 - 3 * Math.sqrt(1 - c4 * c4) / c4);
    }

    /** Returns B4 = 1 + 3 sqrt(1 - c4²)/c4: upper limit of a chart of standard deviations. */
    public double upperDeviationFactor() {
        return 1 + 3 * Math.sqrt(1 - c4 * c4) / c4;
    }

    /** Returns E2 = 3/d2: limits of a chart of single readings from the mean range of n successive ones. */
    public double e2() {
        return 3 / d2;
    }

    /** Returns the probability that the range of n standard normal values is above w. */
    private static double exceedance(double w, int n) {
        // The smallest value lies at x and the n - 1 others within w above it.
        double within = GaussPanels.over(
                x -> n * NormalCurve.density(x) * Math.pow(NormalCurve.between(x, x + w), n - 1.0),
                -WIDEST,
                WIDEST,
                PANELS);
        return 1 - within;
    }

    private static void checkSize(int sampleSize) {
        if (sampleSize < 2 || sampleSize > LARGEST_SAMPLE) {
            throw new IllegalArgumentException(
                    "sampleSize is " + sampleSize + " but must lie between 2 and " + LARGEST_SAMPLE + ".");
        }
    }
}
