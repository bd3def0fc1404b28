// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.util.LinkedHashMap;
import java.util.Map;
import org.ohmstead.signal.TransformDoor;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The transform of real samples that every analysis uses. */
@State(Scope.Benchmark)
public class TransformBenchmark {
    /** How many samples. */
    @Param("1024")
    public int size;

    private TransformDoor door;
    private double[] samples;

    /** Makes the samples. */
    @Setup(Level.Trial)
    public void fill() {
        samples = samples(size);
        door = new TransformDoor(size);
    }

    /** Returns samples of whole numbers, which any language makes alike. */
    static double[] samples(int size) {
        double[] samples = new double[size];
        for (int i = 0; i < size; i++) {
            samples[i] = i * 7919L % 10007 / 10007.0 - 0.5;
        }
        return samples;
    }

    /** Returns some of what the transform gives, as fftw.py does. */
    static Map<String, Double> figures(int size) {
        double[] squares = TransformDoor.squaredMagnitudes(samples(size));
        Map<String, Double> figures = new LinkedHashMap<>();
        for (int k : new int[] {1, 2, 17, size / 2 - 1}) {
            figures.put("square." + k, squares[k]);
        }
        double sum = 0;
        for (double square : squares) {
            sum += square;
        }
        figures.put("sum", sum);
        return figures;
    }

    /** Transforms the samples into another place. */
    @Benchmark
    public Object forward() {
        return door.forward(samples);
    }
}
