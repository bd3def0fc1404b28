// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.NormalDistribution;

/** What can be read from the residuals of a fit. */
public final class ResidualTests {
    private static final int FEWEST_FOR_NORMALITY = 8;

    private ResidualTests() {}

    /** Returns the number of stretches of equal sign; zeros count as positive. */
    public static int runs(double[] residuals) {
        int runs = residuals.length > 0 ? 1 : 0;
        for (int i = 1; i < residuals.length; i++) {
            runs += residuals[i] < 0 != residuals[i - 1] < 0 ? 1 : 0;
        }
        return runs;
    }

    /**
     * Returns how many standard deviations the number of runs lies above what chance gives (A. Wald, J. Wolfowitz,
     * 1940); absent when all have one sign or there are too few.
     */
    public static OptionalDouble runsDeviation(double[] residuals) {
        double negative =
                Arrays.stream(residuals).filter(residual -> residual < 0).count();
        double count = residuals.length;
        double product = 2 * negative * (count - negative);
        double variance = product * (product - count) / (count * count * (count - 1));
        double deviation = (runs(residuals) - product / count - 1) / Math.sqrt(variance);
        return variance > 0 && Double.isFinite(deviation) ? OptionalDouble.of(deviation) : OptionalDouble.empty();
    }

    /**
     * Returns the statistic of Anderson and Darling for a normal distribution whose mean and deviation come from the
     * sample, times 1 + 0.75/n + 2.25/n² (R. B. D'Agostino, M. A. Stephens, Goodness-of-Fit Techniques, 1986, table
     * 4.7); absent with fewer than 8 values or without scatter.
     */
    public static OptionalDouble andersonDarling(double[] values) {
        int count = values.length;
        double mean = Arrays.stream(values).average().orElse(0);
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        if (count < FEWEST_FOR_NORMALITY || !(squares > 0)) {
            return OptionalDouble.empty();
        }
        double deviation = Math.sqrt(squares / (count - 1));
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        NormalDistribution normal = new NormalDistribution(0, 1);
        double sum = 0;
        for (int i = 0; i < count; i++) {
            double below = (sorted[i] - mean) / deviation;
            double above = (mean - sorted[count - 1 - i]) / deviation;
            sum += (2 * i + 1)
                    * (Math.log(normal.cumulativeProbability(below)) + Math.log(normal.cumulativeProbability(above)));
        }
        double statistic = -count - sum / count;
        return OptionalDouble.of(statistic * (1 + 0.75 / count + 2.25 / count / count));
    }
}
