// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The record is held against thinning that goes through all samples. */
class LongRecordTest {
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 31, 32, 33, 64, 95, 1_000, 70_001})
    void thinsAnyWindowAsGoingThroughAllSamplesDoes(int size) {
        Random random = new Random(size);
        // Few different values, so that many are equal and the first must be taken.
        double[] samples = random.ints(size, -9, 9).asDoubleStream().toArray();
        LongRecord record = LongRecord.of(samples);
        assertEquals(size, record.size());
        for (int trial = 0; trial < 200; trial++) {
            int from = random.nextInt(size + 1);
            int to = from + random.nextInt(size + 1 - from);
            int buckets = 1 + random.nextInt(trial % 2 == 0 ? 10 : 400);
            assertEquals(
                    Decimation.envelope(-3, 0.25, samples, from, to, buckets),
                    record.envelope(-3, 0.25, from, to, buckets));
        }
    }

    @Test
    void keepsASinglePeakAmongTwoMillionSamplesWithinTwoPointsForEachRun() {
        double[] samples = new double[2_000_000];
        samples[1_234_567] = 40;
        var points = LongRecord.of(samples).envelope(0, 1, 0, samples.length, 1920);
        assertTrue(points.contains(new PlotPoint(1_234_567, 40)));
        assertTrue(points.size() <= 2 * 1920 + 2);
    }

    @Test
    void rejectsWhatDecimationRejects() {
        double[] samples = new double[100];
        LongRecord record = LongRecord.of(samples);
        assertThrows(IllegalArgumentException.class, () -> record.envelope(0, 0, 0, 100, 5));
        assertThrows(IllegalArgumentException.class, () -> record.envelope(Double.NaN, 1, 0, 100, 5));
        assertThrows(IllegalArgumentException.class, () -> record.envelope(0, 1, 0, 101, 5));
        assertThrows(IllegalArgumentException.class, () -> record.envelope(0, 1, -1, 100, 5));
        assertThrows(IllegalArgumentException.class, () -> record.envelope(0, 1, 0, 100, 0));
        assertThrows(IllegalArgumentException.class, () -> record.envelope(0, 1, 60, 50, 5));
        samples[40] = Double.NaN;
        assertThrows(IllegalArgumentException.class, () -> LongRecord.of(samples));
        samples[40] = 0;
        samples[99] = Double.POSITIVE_INFINITY;
        assertThrows(IllegalArgumentException.class, () -> LongRecord.of(samples));
    }
}
