// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.Arrays;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.NormalCurve;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * The Mann-Kendall test for a steady trend (H. B. Mann, Econometrica 13, 1945; M. G. Kendall, Rank Correlation
 * Methods): it counts how often a later reading lies above an earlier one. It asks neither for a straight line nor for
 * a normal distribution, and one wild reading hardly moves it. Up to 50 readings without ties the probability is exact,
 * otherwise from the normal distribution with the variance corrected for ties and with a continuity correction.
 *
 * @param score later readings above an earlier one minus those below, over all pairs
 * @param tau the score over the number of pairs, -1 to 1
 * @param scoreVariance the variance of the score if there is no trend
 * @param pValue how likely chance alone makes a score as far from zero, 0 to 1
 * @param exact whether the probability is exact
 * @param medianSlope the median of the slopes of all pairs that differ in time, in units per unit of time (P. K. Sen,
 *     Journal of the American Statistical Association 63, 1968); 0 if there are none
 */
public record TrendTest(
        long score, double tau, double scoreVariance, double pValue, boolean exact, double medianSlope) {
    private static final Messages TEXTS = Messages.of(TrendTest.class);

    private static final int FEWEST_READINGS = 4;
    private static final int MOST_READINGS = 3000;
    private static final int MOST_EXACT = 50;

    /** Checks that the numbers are finite. */
    public TrendTest {
        Checks.finite("tau", tau);
        Checks.notNegative("scoreVariance", scoreVariance);
        Checks.notNegative("pValue", pValue);
        Checks.finite("medianSlope", medianSlope);
    }

    /**
     * Returns the test.
     *
     * @param times when the readings were taken, in any unit of time, ascending
     * @param values the readings, 4 to 3000
     */
    public static TrendTest of(double[] times, double[] values) {
        Checks.sameLength("times", times.length, "values", values.length);
        int count = values.length;
        if (count < FEWEST_READINGS || count > MOST_READINGS) {
            throw new IllegalArgumentException("values has " + count + " readings but must have between "
                    + FEWEST_READINGS + " and " + MOST_READINGS + ".");
        }
        long score = 0;
        double[] slopes = new double[count * (count - 1) / 2];
        int slopeCount = 0;
        for (int j = 0; j < count; j++) {
            Checks.finite("values[" + j + "]", values[j]);
            if (j > 0 && !(times[j] >= times[j - 1])) {
                throw new IllegalArgumentException(
                        "times[" + j + "] is " + times[j] + " but must not be before the time before it.");
            }
            for (int i = 0; i < j; i++) {
                score += (long) Math.signum(values[j] - values[i]);
                if (times[j] > times[i]) {
                    slopes[slopeCount] = (values[j] - values[i]) / (times[j] - times[i]);
                    slopeCount++;
                }
            }
        }
        double variance = variance(values);
        boolean exact = count <= MOST_EXACT && variance == untiedVariance(count);
        double pValue = exact ? exactChance(score, count) : normalChance(score, variance);
        double pairs = count * (count - 1) / 2.0;
        return new TrendTest(score, score / pairs, variance, pValue, exact, median(Arrays.copyOf(slopes, slopeCount)));
    }

    /** Returns whether there is a trend, at a risk of a false alarm strictly between 0 and 1. */
    public boolean trends(double significance) {
        return pValue < Checks.probability("significance", significance);
    }

    /**
     * Returns the result in a whole sentence, at a risk of a false alarm of 5 %.
     *
     * @param unit the unit of the readings, may be empty
     * @param timeUnit one unit of time in words, e.g. "day"
     */
    public String sentence(String unit, String timeUnit) {
        if (!trends(0.05)) {
            return TEXTS.text("trend.none");
        }
        return TEXTS.text(
                score > 0 ? "trend.up" : "trend.down",
                Sentences.quantity(Math.abs(medianSlope), unit),
                DriftLine.timeWord(timeUnit));
    }

    private static double untiedVariance(int count) {
        return count * (count - 1.0) * (2.0 * count + 5) / 18;
    }

    private static double variance(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double ties = 0;
        int start = 0;
        for (int i = 1; i <= sorted.length; i++) {
            if (i == sorted.length || sorted[i] != sorted[start]) {
                int tied = i - start;
                ties += untiedVariance(tied);
                start = i;
            }
        }
        return untiedVariance(values.length) - ties;
    }

    private static double normalChance(long score, double variance) {
        if (score == 0 || variance <= 0) {
            return 1;
        }
        return Math.min(1, 2 * NormalCurve.below(-(Math.abs(score) - 1) / Math.sqrt(variance)));
    }

    /** Returns the exact two-sided probability, from the number of orders with so many inversions. */
    private static double exactChance(long score, int count) {
        int pairs = count * (count - 1) / 2;
        double[] chances = new double[pairs + 1];
        chances[0] = 1;
        int most = 0;
        for (int n = 2; n <= count; n++) {
            double[] next = new double[pairs + 1];
            for (int inversions = 0; inversions <= most; inversions++) {
                for (int added = 0; added < n; added++) {
                    next[inversions + added] += chances[inversions] / n;
                }
            }
            chances = next;
            most += n - 1;
        }
        int fewest = (int) ((pairs - Math.abs(score)) / 2);
        double tail = 0;
        for (int inversions = 0; inversions <= fewest; inversions++) {
            tail += chances[inversions];
        }
        return Math.min(1, 2 * tail);
    }

    private static double median(double[] slopes) {
        if (slopes.length == 0) {
            return 0;
        }
        Arrays.sort(slopes);
        int middle = slopes.length / 2;
        return slopes.length % 2 == 1 ? slopes[middle] : (slopes[middle - 1] + slopes[middle]) / 2;
    }
}
