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

class TrendTestTest {

    private static double[] days(int count) {
        return IntStream.range(0, count).asDoubleStream().toArray();
    }

    @Test
    void exactProbabilitiesOfSmallSamples() {
        // All 4! orders: only one has S = 6, three more have S = 4; both sides count.
        assertEquals(2 / 24.0, TrendTest.of(days(4), new double[] {1, 2, 3, 4}).pValue(), 1e-12);
        assertEquals(8 / 24.0, TrendTest.of(days(4), new double[] {1, 2, 4, 3}).pValue(), 1e-12);
        assertEquals(
                2 / 120.0, TrendTest.of(days(5), new double[] {5, 4, 3, 2, 1}).pValue(), 1e-12);
        // SciPy 1.17.1: scipy.stats.kendalltau(range(8), x, method='exact') and theilslopes(x, range(8)).
        TrendTest eight = TrendTest.of(days(8), new double[] {3.1, 2.9, 3.4, 3.3, 3.8, 3.6, 4.1, 3.9});
        assertTrue(eight.exact());
        assertEquals(0.7142857142857142, eight.tau(), 1e-12);
        assertEquals(20, eight.score());
        assertEquals(0.014136904761904762, eight.pValue(), 1e-12);
        assertEquals(0.15, eight.medianSlope(), 1e-12);
        assertTrue(eight.trends(0.05));
        assertEquals("The readings go steadily up, by about 0.15 W per day.", eight.sentence("W", "day"));
    }

    @Test
    void exactProbabilityOfThirtyReadings() {
        // SciPy 1.17.1: kendalltau(range(30), numpy.round(sin(1.7 i) + 0.04 i, 6), method='exact').
        double[] values = new double[30];
        Arrays.setAll(values, i -> Math.round((Math.sin(1.7 * i) + 0.04 * i) * 1e6) / 1e6);
        TrendTest thirty = TrendTest.of(days(30), values);
        assertEquals(0.25057471264367814, thirty.tau(), 1e-12);
        assertEquals(0.05344665404681454, thirty.pValue(), 1e-10);
        assertFalse(thirty.trends(0.05));
        assertEquals("The readings show no steady trend up or down.", thirty.sentence("W", "day"));
    }

    @Test
    void tiesLowerTheVariance() {
        // n(n-1)(2n+5)/18 = 510/18 less two pairs of 18/18 each; z = (13 - 1)/sqrt(474/18) = 2.338443, two-sided
        // normal probability 0.019364.
        TrendTest tied = TrendTest.of(days(6), new double[] {1, 2, 2, 3, 4, 4});
        assertFalse(tied.exact());
        assertEquals(13, tied.score());
        assertEquals(474 / 18.0, tied.scoreVariance(), 1e-12);
        assertEquals(0.019364, tied.pValue(), 1e-6);
        TrendTest level = TrendTest.of(days(5), new double[] {2, 2, 2, 2, 2});
        assertEquals(1, level.pValue());
        assertEquals(0, level.medianSlope());
    }

    @Test
    void oneWildReadingHardlyMatters() {
        double[] values = new double[40];
        Arrays.setAll(values, i -> 100 - 0.01 * i);
        values[20] = 500;
        TrendTest trend = TrendTest.of(days(40), values);
        assertTrue(trend.pValue() < 1e-9);
        assertEquals(-0.01, trend.medianSlope(), 1e-12);
    }

    @Test
    void manyReadingsUseTheNormalDistribution() {
        // Without ties n(n-1)(2n+5)/18: n = 60 gives 24583.33.
        double[] values = new double[60];
        Arrays.setAll(values, i -> (i * 37) % 61);
        TrendTest trend = TrendTest.of(days(60), values);
        assertFalse(trend.exact());
        assertEquals(60 * 59 * 125 / 18.0, trend.scoreVariance(), 1e-9);
    }

    @Test
    void rejectsWhatHasNoOrder() {
        assertThrows(IllegalArgumentException.class, () -> TrendTest.of(days(3), new double[3]));
        assertThrows(IllegalArgumentException.class, () -> TrendTest.of(new double[] {1, 2, 1, 3}, new double[4]));
        assertThrows(IllegalArgumentException.class, () -> TrendTest.of(days(3001), new double[3001]));
    }
}
