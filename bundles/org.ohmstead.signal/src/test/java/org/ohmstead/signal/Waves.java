// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Waves for the tests, with series and sums from closed forms that are independent of the code under test. */
final class Waves {
    static final double RATE_HZ = 48_000;

    private Waves() {}

    /** A function of the phase in radians, sampled as it is. */
    static double[] sampled(int size, double frequencyHz, double phaseRadians, DoubleUnaryOperator wave) {
        double[] samples = new double[size];
        for (int i = 0; i < size; i++) {
            double cycles = frequencyHz * i / RATE_HZ;
            samples[i] = wave.applyAsDouble(2 * Math.PI * (cycles - Math.floor(cycles)) + phaseRadians);
        }
        return samples;
    }

    /** A sum of sines with the given factors from order 1 up. */
    static DoubleUnaryOperator series(double... factors) {
        return phase -> {
            double sum = 0;
            for (int n = 1; n <= factors.length; n++) {
                sum += factors[n - 1] * Math.sin(n * phase);
            }
            return sum;
        };
    }

    /** Sine series of a sine of amplitude 1 cut off at +-k: the closed form of the symmetric hard limit. */
    static double[] clippedSeries(double k, int orders) {
        double theta = Math.asin(k);
        double[] factors = new double[orders];
        factors[0] = 2 / Math.PI * (theta + k * Math.sqrt(1 - k * k));
        for (int n = 3; n <= orders; n += 2) {
            factors[n - 1] =
                    2 / (Math.PI * n) * (Math.sin((n - 1) * theta) / (n - 1) + Math.sin((n + 1) * theta) / (n + 1));
        }
        return factors;
    }

    static DoubleUnaryOperator clipped(double k) {
        return phase -> Math.max(-k, Math.min(k, Math.sin(phase)));
    }

    static double distortion(double[] factors, int highest) {
        double sum = 0;
        for (int n = 2; n <= Math.min(highest, factors.length); n++) {
            sum += factors[n - 1] * factors[n - 1];
        }
        return Math.sqrt(sum) / Math.abs(factors[0]);
    }

    static double[] withNoise(double[] samples, double voltsRms, long seed) {
        Random random = new Random(seed);
        double[] noisy = samples.clone();
        for (int i = 0; i < noisy.length; i++) {
            noisy[i] += voltsRms * random.nextGaussian();
        }
        return noisy;
    }

    static double[] plus(double[] first, double[] second) {
        double[] sum = first.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += second[i];
        }
        return sum;
    }

    static double[] scaled(double[] samples, double factor, double offset) {
        double[] result = samples.clone();
        for (int i = 0; i < result.length; i++) {
            result[i] = factor * samples[i] + offset;
        }
        return result;
    }

    static ChannelAnalysis analyze(double[] samples) throws CaptureException {
        return analyze(samples, AnalysisSettings.forResistance(4));
    }

    static ChannelAnalysis analyze(double[] samples, AnalysisSettings settings) throws CaptureException {
        return WaveformAnalyzer.analyze(Waveform.of(RATE_HZ, samples), settings);
    }
}
