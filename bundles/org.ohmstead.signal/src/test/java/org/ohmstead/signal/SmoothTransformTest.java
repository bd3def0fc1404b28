// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jtransforms.fft.DoubleFFT_1D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SmoothTransformTest {
    private static double[][] transformed(SmoothTransform plan, double[] samples) {
        double[][] both = {new double[samples.length / 2 + 1], new double[samples.length / 2 + 1]};
        plan.forward(samples, both[0], both[1]);
        return both;
    }

    @ParameterizedTest
    @ValueSource(ints = {1024, 1080, 1250, 1458, 2048, 3888, 6250, 12_000, 16_384, 24_576, 48_000, 163_840, 192_000})
    void isTheTransformOfTheLibrary(int size) {
        double[] samples = Waves.withNoise(new double[size], 1, size);
        SmoothTransform plan = new SmoothTransform(size);
        // A second time, as a kept plan must not remember the first.
        transformed(plan, Waves.withNoise(new double[size], 1, 1));
        double[][] found = transformed(plan, samples);
        double[] expected = samples.clone();
        new DoubleFFT_1D(size).realForward(expected);
        double allowed = 1e-13 * Math.sqrt(size) * Math.log(size);
        assertEquals(expected[0], found[0][0], allowed);
        assertEquals(expected[1], found[0][size / 2], allowed);
        assertEquals(0, found[1][0]);
        assertEquals(0, found[1][size / 2]);
        for (int k = 1; k < size / 2; k++) {
            assertEquals(expected[2 * k], found[0][k], allowed, "real part of " + k);
            assertEquals(expected[2 * k + 1], found[1][k], allowed, "imaginary part of " + k);
        }
    }

    @Test
    void showsALineOfALongRecordWhereItIs() {
        int size = 1_920_000;
        double[] samples = new double[size];
        for (int i = 0; i < size; i++) {
            samples[i] = 2 * Math.cos(2 * Math.PI * (9973L * i % size) / size - 0.5);
        }
        double[][] found = transformed(new SmoothTransform(size), samples);
        for (int k = 0; k <= size / 2; k++) {
            boolean line = k == 9973;
            assertEquals(line ? size * Math.cos(0.5) : 0, found[0][k], 1e-7, "real part of " + k);
            assertEquals(line ? -size * Math.sin(0.5) : 0, found[1][k], 1e-7, "imaginary part of " + k);
        }
    }

    @Test
    void servesEvenProductsOfTwoThreeAndFive() {
        assertTrue(SmoothTransform.serves(1_920_000));
        assertTrue(SmoothTransform.serves(1024));
        assertFalse(SmoothTransform.serves(1000));
        assertFalse(SmoothTransform.serves(1125));
        assertFalse(SmoothTransform.serves(1792));
        assertFalse(SmoothTransform.serves(2 * 1009));
    }

    @Test
    void padsToAQuickSizeNotMuchAbove() {
        for (int size = 1; size < 5_000_000; size += 1 + size / 50) {
            int padded = RealTransform.paddedSize(size);
            assertTrue(padded >= size, padded + " for " + size);
            assertTrue(size < 1024 ? padded < 2 * size || size == 1 : padded < 1.13 * size, padded + " for " + size);
            assertTrue(size < 1024 || SmoothTransform.serves(padded), padded + " for " + size);
        }
    }

    @Test
    void plansAreLentToOneAtATime() {
        SmoothPlans plans = new SmoothPlans();
        SmoothTransform first = plans.take(2048);
        SmoothTransform second = plans.take(2048);
        assertFalse(first == second);
        plans.giveBack(first);
        assertSame(first, plans.take(2048));
        for (int size : new int[] {1024, 1080, 1200, 1250, 1280, 1440, 1458, 1500}) {
            plans.giveBack(plans.take(size));
        }
        assertEquals(6, plans.size());
    }

    @Test
    void manyThreadsGetTheSame() throws Exception {
        double[] samples = Waves.withNoise(new double[12_000], 1, 7);
        double[] expected = RealTransform.squaredMagnitudes(samples.clone());
        ExecutorService pool = Executors.newFixedThreadPool(4);
        try {
            List<Future<double[]>> results = new ArrayList<>();
            for (int i = 0; i < 100; i++) {
                results.add(pool.submit(() -> RealTransform.squaredMagnitudes(samples.clone())));
            }
            for (Future<double[]> result : results) {
                assertTrue(Arrays.equals(expected, result.get()));
            }
        } finally {
            pool.shutdownNow();
        }
    }
}
