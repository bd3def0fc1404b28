// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PlainSpectrumTest {
    private static double[] record(int size, double cycles) {
        double radians = 2 * Math.PI * cycles / size;
        double[] samples = new double[size];
        for (int i = 0; i < size; i++) {
            samples[i] = 0.3 + 5 * Math.sin(radians * i + 0.4) + 0.02 * Math.cos(3 * radians * i);
        }
        return Waves.withNoise(samples, 0.01, size);
    }

    @ParameterizedTest
    @EnumSource(Window.class)
    void makesEveryWindowOutOfNeighbours(Window window) {
        double[] samples = record(4800, 100.3);
        double[] squares = PlainSpectrum.of(samples).squares(window);
        double mean = 0;
        for (double sample : samples) {
            mean += sample / samples.length;
        }
        double[] weights = window.weights(samples.length);
        for (int i = 0; i < samples.length; i++) {
            weights[i] *= samples[i] - mean;
        }
        double[] expected = RealTransform.squaredMagnitudes(weights);
        for (int k = 0; k < expected.length; k++) {
            assertEquals(expected[k], squares[k], 1e-9 + 1e-11 * expected[k], window + " " + k);
        }
    }

    @ParameterizedTest
    @CsvSource({"4800, 100.3", "4800, 100", "12000, 250.5", "12000, 290.499999999", "2000, 21.7", "48000, 23500.2"})
    void whatIsLeftIsThatOfTheSamples(int size, double cycles) {
        double[] samples = record(size, cycles);
        HarmonicFit fit = HarmonicFit.of(samples, 2 * Math.PI * cycles / size, 20, true);
        ModelSpectrum model = ModelSpectrum.of(fit, size);
        Lines lines = PlainSpectrum.of(samples).rest(fit.dcVolts(), model);
        double[] squares = new double[lines.count()];
        lines.squares(0, squares.length, squares);
        double[] rest = Window.HANN.centredWeights(size);
        for (int i = 0; i < size; i++) {
            rest[i] *= fit.residual()[i];
        }
        double[] expected = RealTransform.squaredMagnitudes(rest);
        for (int k = 0; k < expected.length; k++) {
            // Lines beyond the reach of the model are left out: 1e-9 of the strongest.
            double allowed = 1e-9 * 5 * size;
            assertEquals(Math.sqrt(expected[k]), Math.sqrt(squares[k]), allowed, "line " + k);
        }
    }

    @Test
    void sumsOfBlocksAreThoseOfTheSamples() {
        double[] samples = record(5003, 200.2);
        double radians = 2 * Math.PI * 200 / samples.length;
        BlockMoments moments = new BlockMoments(samples, radians);
        double other = radians + 5e-6;
        assertTrue(moments.reaches(other));
        assertFalse(moments.reaches(radians + 1e-4));
        double[] sums = moments.sums(other);
        double[] expected = new double[4];
        for (int i = 0; i < samples.length; i++) {
            double time = i - 0.5 * (samples.length - 1);
            expected[0] += samples[i] * Math.cos(other * time);
            expected[1] += samples[i] * Math.sin(other * time);
            expected[2] += samples[i] * time * Math.cos(other * time);
            expected[3] += samples[i] * time * Math.sin(other * time);
        }
        for (int j = 0; j < 4; j++) {
            assertEquals(expected[j], sums[j], 1e-8 * samples.length * (j < 2 ? 1 : samples.length), "sum " + j);
        }
    }

    @Test
    void sumsOfTheWaveAreThoseOfItsSamples() {
        double[] samples = record(4800, 100.3);
        HarmonicFit fit = HarmonicFit.of(samples, 2 * Math.PI * 100.3 / 4800, 20, true);
        double[] sums = fit.waveSums(7, 4785);
        double sum = 0;
        double squareSum = 0;
        for (int i = 7; i < 7 + 4785; i++) {
            double wave = samples[i] - fit.residual()[i] - fit.dcVolts();
            sum += wave;
            squareSum += wave * wave;
        }
        assertEquals(sum, sums[0], 1e-7);
        assertEquals(squareSum, sums[1], 1e-7 * squareSum);
    }

    @Test
    void aToneThatPausesIsNotSteady() {
        double[] samples = record(4800, 100.3);
        assertTrue(BurstTrain.isSteady(samples, 0.3, 47.9));
        for (int i = 2000; i < 2600; i++) {
            samples[i] = 0.3;
        }
        assertFalse(BurstTrain.isSteady(samples, 0.3, 47.9));
    }

    /** The look at blocks may save the look at each place of the window, but never says anything else. */
    @Test
    void steadyMeansThatTheWindowFindsNoPauseAnywhere() {
        Random random = new Random(7);
        int steady = 0;
        for (int round = 0; round < 400; round++) {
            double period = 24 + 60 * random.nextDouble();
            double[] samples = new double[600 + random.nextInt(900)];
            int from = random.nextInt(samples.length);
            int to = Math.min(samples.length, from + 1 + random.nextInt(120));
            double low = 0.2 + 0.8 * random.nextDouble();
            for (int i = 0; i < samples.length; i++) {
                samples[i] = (i >= from && i < to ? low : 1) * Math.sin(2 * Math.PI * i / period);
            }
            int window = (int) Math.rint(period);
            double lowest = Double.POSITIVE_INFINITY;
            double highest = 0;
            for (int i = 0; i + window <= samples.length; i++) {
                double square = 0;
                for (int j = i; j < i + window; j++) {
                    square += samples[j] * samples[j];
                }
                lowest = Math.min(lowest, square);
                highest = Math.max(highest, square);
            }
            boolean expected = lowest > 0.25 * highest;
            steady += expected ? 1 : 0;
            assertEquals(expected, BurstTrain.isSteady(samples, 0, period), "round " + round);
        }
        assertTrue(steady > 100 && steady < 390, steady + " of them were steady");
    }
}
