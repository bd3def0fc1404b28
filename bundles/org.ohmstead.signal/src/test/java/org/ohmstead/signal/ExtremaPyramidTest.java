// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pyramid is held against going through all values one by one. */
class ExtremaPyramidTest {
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7, 8, 9, 63, 64, 65, 511, 512, 513, 4_095, 5_000, 70_001})
    void findsTheExtremesOfAnyStretch(int size) {
        Random random = new Random(size);
        double[] values = random.doubles(size, -40, 40).toArray();
        ExtremaPyramid pyramid = ExtremaPyramid.of(values);
        for (int trial = 0; trial < 200; trial++) {
            int from = random.nextInt(size);
            int to = from + 1 + random.nextInt(size - from);
            double low = values[from];
            double high = values[from];
            for (int i = from; i < to; i++) {
                low = Math.min(low, values[i]);
                high = Math.max(high, values[i]);
            }
            assertEquals(low, pyramid.valueAt(pyramid.lowestIn(from, to)), 0);
            assertEquals(high, pyramid.valueAt(pyramid.highestIn(from, to)), 0);
        }
    }

    @Test
    void takesTheFirstOfEqualValues() {
        ExtremaPyramid pyramid = ExtremaPyramid.of(new double[100]);
        assertEquals(3, pyramid.lowestIn(3, 100));
        assertEquals(3, pyramid.highestIn(3, 100));
    }

    @Test
    void keepsASinglePeakAmongTwoMillionSamples() {
        double[] volts = new double[2_000_000];
        volts[1_234_567] = 40;
        ExtremaPyramid pyramid = ExtremaPyramid.of(Waveform.of(Waves.RATE_HZ, volts));
        assertEquals(1_234_567, pyramid.highestIn(0, volts.length));
        assertEquals(1_234_567, pyramid.highestIn(1_234_567, 1_234_568));
        assertEquals(0, pyramid.valueAt(pyramid.highestIn(0, 1_234_567)), 0);
    }

    @Test
    void rejectsAnEmptyStretchAndValuesThatAreNoNumbers() {
        ExtremaPyramid pyramid = ExtremaPyramid.of(new double[] {1, 2, 3});
        assertThrows(IllegalArgumentException.class, () -> pyramid.lowestIn(2, 2));
        assertThrows(IllegalArgumentException.class, () -> pyramid.highestIn(0, 4));
        assertThrows(IllegalArgumentException.class, () -> ExtremaPyramid.of(new double[0]));
        assertThrows(IllegalArgumentException.class, () -> ExtremaPyramid.of(new double[] {Double.NaN}));
    }
}
