// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.StudentT;

/**
 * Grubbs' test for one outlier in repeated readings that are otherwise normally distributed: G is the largest distance
 * from the mean in sample standard deviations. Use it once per set of readings, and never drop a reading without a
 * physical reason.
 */
public final class GrubbsTest {

    private static final int FEWEST_READINGS = 3;

    /**
     * Which readings are suspected. ISO 5725-2 and many tables differ in this: a one-sided 2.5 % value is the
     * two-sided 5 % value.
     */
    public enum Side {
        /** The reading farthest from the mean, on whichever side. */
        EITHER,
        /** The highest reading only. */
        HIGHEST,
        /** The lowest reading only. */
        LOWEST
    }

    /**
     * What the test found.
     *
     * @param index the place of the suspected reading, counted from 0
     * @param reading the suspected reading
     * @param statistic G = |reading - mean|/s; 0 if all readings are equal
     * @param criticalValue the largest G to be expected from scatter alone
     * @param outlier whether G exceeds the critical value
     */
    public record Outcome(int index, double reading, double statistic, double criticalValue, boolean outlier) {}

    private GrubbsTest() {}

    /**
     * Returns the critical value (n-1)/sqrt(n) sqrt(t²/(n-2+t²)) with t Student's quantile of n-2 degrees of freedom
     * at upper tail probability significance/(2n) for {@link Side#EITHER} and significance/n otherwise.
     *
     * @param count the number of readings n, at least 3
     * @param significance the risk of a false alarm, strictly between 0 and 1, e.g. 0.05
     * @param side which readings are suspected
     */
    public static double criticalValue(int count, double significance, Side side) {
        if (count < FEWEST_READINGS) {
            throw new IllegalArgumentException("count is " + count + " but must be at least " + FEWEST_READINGS + ".");
        }
        Checks.probability("significance", significance);
        double tail = significance / count / (side == Side.EITHER ? 2 : 1);
        double t = StudentT.quantile(1 - tail, count - 2.0);
        return (count - 1) / Math.sqrt(count) * Math.sqrt(t * t / (count - 2 + t * t));
    }

    /** Returns the outcome for the reading farthest from the mean; see {@link #test(double[], double, Side)}. */
    public static Outcome test(double[] readings, double significance) {
        return test(readings, significance, Side.EITHER);
    }

    /**
     * Returns the outcome for the suspected reading.
     *
     * @param readings at least three finite readings
     * @param significance the risk of a false alarm, strictly between 0 and 1
     * @param side which readings are suspected
     */
    public static Outcome test(double[] readings, double significance, Side side) {
        double critical = criticalValue(readings.length, significance, side);
        Estimate estimate = Estimate.fromReadings(readings);
        double deviation = estimate.standardUncertainty() * Math.sqrt(readings.length);
        int suspect = 0;
        double farthest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < readings.length; i++) {
            double distance = readings[i] - estimate.value();
            double suspicion = side == Side.EITHER ? Math.abs(distance) : side == Side.HIGHEST ? distance : -distance;
            if (suspicion > farthest) {
                farthest = suspicion;
                suspect = i;
            }
        }
        double statistic = deviation > 0 ? farthest / deviation : 0;
        return new Outcome(suspect, readings[suspect], statistic, critical, statistic > critical);
    }
}
