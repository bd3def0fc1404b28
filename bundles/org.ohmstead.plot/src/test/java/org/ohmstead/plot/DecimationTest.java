// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimationTest {
    private static double[] rising(int count, double start, double step) {
        double[] x = new double[count];
        for (int i = 0; i < count; i++) {
            x[i] = start + i * step;
        }
        return x;
    }

    private static double[] noise(int count, long seed) {
        Random random = new Random(seed);
        double[] y = new double[count];
        for (int i = 0; i < count; i++) {
            y[i] = random.nextGaussian();
        }
        return y;
    }

    /** Brute force over the definition: sample i belongs to the run k with k n / b <= i < (k + 1) n / b. */
    @ParameterizedTest
    @CsvSource({"1000, 10", "1001, 10", "997, 31", "192000, 640", "23, 11", "23, 1"})
    void keepsLowestAndHighestOfEachRunAndBothEnds(int count, int buckets) {
        double[] x = rising(count, 0, 1);
        double[] y = noise(count, count);
        TreeSet<Integer> expected = new TreeSet<>(List.of(0, count - 1));
        for (int k = 0; k < buckets; k++) {
            int lowest = -1;
            int highest = -1;
            for (int i = 0; i < count; i++) {
                boolean inside = i >= (long) k * count / buckets && i < (long) (k + 1) * count / buckets;
                if (inside && (lowest < 0 || y[i] < y[lowest])) {
                    lowest = i;
                }
                if (inside && (highest < 0 || y[i] > y[highest])) {
                    highest = i;
                }
            }
            expected.add(lowest);
            expected.add(highest);
        }
        List<PlotPoint> wanted = new ArrayList<>();
        expected.forEach(i -> wanted.add(new PlotPoint(x[i], y[i])));
        List<PlotPoint> kept = Decimation.envelope(x, y, buckets);
        assertEquals(wanted, kept);
        assertTrue(kept.size() <= 2 * buckets + 2);
    }

    @Test
    void keepsASinglePeakHoweverNarrow() {
        double[] y = new double[50_000];
        y[31_415] = 7;
        List<PlotPoint> kept = Decimation.envelope(rising(y.length, 0, 1), y, 20);
        assertTrue(kept.contains(new PlotPoint(31_415, 7)));
    }

    @Test
    void returnsEverythingWhereThinningSavesNothing() {
        double[] x = rising(20, 3, 0.5);
        double[] y = noise(20, 1);
        assertEquals(Series.of("", x, y, Style.LINE, 0).points(), Decimation.envelope(x, y, 10));
        assertEquals(List.of(), Decimation.envelope(new double[0], new double[0], 10));
    }

    @Test
    void logEnvelopeKeepsLoneLowBinsAndTheHighestOfEachCrowdedRun() {
        double[] x = rising(10_000, 1, 1);
        double[] y = noise(10_000, 5);
        int buckets = 40;
        List<PlotPoint> kept = Decimation.logEnvelope(x, y, buckets);
        // 10 000 bins over four decades: each of 40 runs spans a ratio of 10^0.1, so 1 to 7 Hz stand alone or in pairs.
        for (int i = 0; i < 7; i++) {
            assertTrue(kept.contains(new PlotPoint(x[i], y[i])), "bin " + x[i]);
        }
        for (int k = 0; k < buckets; k++) {
            double from = Math.pow(10_000, (double) k / buckets);
            double to = Math.pow(10_000, (k + 1.0) / buckets);
            double highest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < x.length; i++) {
                // Bins on a boundary may belong to either run; they are left out of the truth.
                boolean inside = x[i] > from * (1 + 1e-9) && x[i] < to * (1 - 1e-9);
                highest = inside ? Math.max(highest, y[i]) : highest;
            }
            double wanted = highest;
            boolean found = kept.stream()
                    .anyMatch(point ->
                            point.x() > from * (1 - 1e-9) && point.x() < to * (1 + 1e-9) && point.y() >= wanted);
            assertTrue(found || highest == Double.NEGATIVE_INFINITY, "run " + k);
        }
        assertTrue(kept.size() <= 2 * buckets + 2);
    }

    /** The part of a record thins as the record would that has that part alone. */
    @ParameterizedTest
    @CsvSource({"0, 1000, 10", "17, 983, 31", "500, 1000, 7", "250, 260, 3", "400, 400, 5"})
    void aRangeThinsAsItsCopyWould(int from, int to, int buckets) {
        double[] x = rising(1000, 2, 0.5);
        double[] y = noise(1000, 11);
        double[] partX = Arrays.copyOfRange(x, from, to);
        double[] partY = Arrays.copyOfRange(y, from, to);
        assertEquals(Decimation.envelope(partX, partY, buckets), Decimation.envelope(x, y, from, to, buckets));
        assertEquals(Decimation.envelope(partX, partY, buckets), Decimation.envelope(2, 0.5, y, from, to, buckets));
        assertEquals(Decimation.logEnvelope(partX, partY, buckets), Decimation.logEnvelope(x, y, from, to, buckets));
    }

    @ParameterizedTest
    @CsvSource({"-1, 3", "0, 4", "2, 1"})
    void rejectsRangesOutsideTheRecord(int from, int to) {
        double[] three = {1, 2, 3};
        assertThrows(IllegalArgumentException.class, () -> Decimation.envelope(three, three, from, to, 1));
        assertThrows(IllegalArgumentException.class, () -> Decimation.envelope(0, 1, three, from, to, 1));
        assertThrows(IllegalArgumentException.class, () -> Decimation.logEnvelope(three, three, from, to, 1));
    }

    @Test
    void rejectsSamplesThatDoNotAdvance() {
        assertThrows(IllegalArgumentException.class, () -> Decimation.envelope(0, 0, new double[3], 0, 3, 1));
    }

    @Test
    void rejectsWhatItCannotThin() {
        double[] three = {1, 2, 3};
        assertThrows(IllegalArgumentException.class, () -> Decimation.envelope(three, new double[2], 1));
        assertThrows(IllegalArgumentException.class, () -> Decimation.envelope(three, three, 0));
        assertThrows(
                IllegalArgumentException.class, () -> Decimation.envelope(three, new double[] {1, Double.NaN, 2}, 1));
        assertThrows(IllegalArgumentException.class, () -> Decimation.logEnvelope(new double[] {0, 1, 2}, three, 1));
        assertThrows(IllegalArgumentException.class, () -> Decimation.logEnvelope(new double[] {2, 1, 3}, three, 1));
    }
}
