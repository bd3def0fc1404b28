// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.internal.Well;

class CheckStandardReviewTest {

    private static final CheckStandardReview.Settings SETTINGS = CheckStandardReview.Settings.usual("W");

    private static double[] steady(int count, long seed) {
        Well random = new Well(seed);
        double[] values = new double[count];
        Arrays.setAll(values, i -> 100 + 0.1 * random.nextGaussian());
        return values;
    }

    private static double[] days(int count) {
        return IntStream.range(0, count).asDoubleStream().toArray();
    }

    @Test
    void aSteadyBenchMayRun() {
        CheckStandardReview review = CheckStandardReview.of(days(30), steady(30, 1), SETTINGS);
        assertTrue(review.findings().isEmpty(), review.findings().toString());
        assertTrue(review.mayRun());
        assertEquals(20, review.chart().baselineCount());
    }

    @Test
    void aReadingOutsideTheLimitsForbidsTheRun() {
        double[] values = steady(30, 1);
        values[29] = 101;
        CheckStandardReview review = CheckStandardReview.of(days(30), values, SETTINGS);
        assertFalse(review.mayRun());
        CheckStandardReview.Finding worst = review.findings().get(0);
        assertTrue(worst.serious());
        assertTrue(worst.sentence().startsWith("Reading 30: one point lies outside"), worst.sentence());
        assertTrue(
                review.findings().stream().anyMatch(f -> f.sentence().startsWith("The newest reading lies")),
                review.findings().toString());
        // Once it is measured again and in order, the old signal no longer forbids the run.
        double[] again = Arrays.copyOf(values, 31);
        again[30] = 100;
        assertTrue(CheckStandardReview.of(days(31), again, SETTINGS).mayRun());
    }

    @Test
    void driftIsFoundBeforeTheLimitsAreReached() {
        double[] values = steady(60, 2);
        for (int i = 20; i < 60; i++) {
            values[i] += 0.006 * (i - 20);
        }
        CheckStandardReview review = CheckStandardReview.of(days(60), values, SETTINGS);
        assertTrue(review.drift().orElseThrow().drifts());
        assertTrue(
                review.findings().stream().anyMatch(f -> f.sentence().startsWith("The readings drift by 0.00")),
                review.findings().toString());
    }

    @Test
    void oneWildReadingDoesNotHideATrend() {
        double[] values = steady(60, 2);
        for (int i = 0; i < 60; i++) {
            values[i] += 0.004 * i;
        }
        values[40] = 130;
        CheckStandardReview review = CheckStandardReview.of(days(60), values, SETTINGS);
        assertFalse(review.drift().orElseThrow().drifts());
        assertTrue(
                review.findings().stream().anyMatch(f -> f.sentence().startsWith("The readings go steadily up")),
                review.findings().toString());
    }

    @Test
    void anOutlierInTheBaselineIsNamed() {
        double[] values = steady(30, 3);
        values[4] = 101.5;
        CheckStandardReview review = CheckStandardReview.of(days(30), values, SETTINGS);
        assertTrue(
                review.findings().stream().anyMatch(f -> f.sentence().startsWith("Baseline reading 5, 101.5 W")),
                review.findings().toString());
    }

    @Test
    void readingsOfOneMomentHaveNoDrift() {
        CheckStandardReview review = CheckStandardReview.of(new double[25], steady(25, 4), SETTINGS);
        assertTrue(review.drift().isEmpty());
        assertEquals(0, review.trend().medianSlope());
    }

    @Test
    void rejectsTooFewAndDisorderedReadings() {
        assertThrows(IllegalArgumentException.class, () -> CheckStandardReview.of(days(19), steady(19, 1), SETTINGS));
        double[] back = days(20);
        back[10] = 3;
        assertThrows(IllegalArgumentException.class, () -> CheckStandardReview.of(back, steady(20, 1), SETTINGS));
        assertThrows(
                IllegalArgumentException.class,
                () -> new CheckStandardReview.Settings(3, RunRule.EIGHT_TESTS, 0.01, "W"));
    }
}
