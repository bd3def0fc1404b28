// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jtransforms.fft.DoubleFFT_1D;
import org.junit.jupiter.api.Test;

class TransformPlansTest {
    private static double[] fresh(double[] samples) {
        double[] expected = samples.clone();
        new DoubleFFT_1D(samples.length).realForward(expected);
        return expected;
    }

    @Test
    void keepsOnlyAFewAndNoHugePlan() {
        TransformPlans plans = new TransformPlans();
        for (int size = 2; size < 60; size++) {
            for (int again = 0; again < 2; again++) {
                double[] samples = Waves.withNoise(new double[size], 1, size);
                double[] expected = fresh(samples);
                plans.realForward(samples);
                assertArrayEquals(expected, samples);
            }
        }
        assertEquals(8, plans.size());
        TransformPlans others = new TransformPlans();
        others.realForward(new double[1 << 18]);
        assertEquals(0, others.size());
        others.realForward(new double[1 << 10]);
        others.realForward(new double[1 << 10]);
        assertEquals(1, others.size());
    }

    @Test
    void servesManyThreads() throws Exception {
        TransformPlans plans = new TransformPlans();
        ExecutorService pool = Executors.newFixedThreadPool(4);
        try {
            List<Future<double[]>> results = new ArrayList<>();
            for (int i = 0; i < 200; i++) {
                double[] samples = Waves.withNoise(new double[1000 + i % 3], 1, i);
                results.add(pool.submit(() -> {
                    plans.realForward(samples);
                    return samples;
                }));
            }
            for (int i = 0; i < results.size(); i++) {
                assertArrayEquals(
                        fresh(Waves.withNoise(new double[1000 + i % 3], 1, i)),
                        results.get(i).get());
            }
        } finally {
            pool.shutdownNow();
        }
    }
}
