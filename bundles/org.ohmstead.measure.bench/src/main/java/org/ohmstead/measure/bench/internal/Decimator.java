// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

/**
 * The filter of a recorder that samples a finely stepped wave: a sinc with a Kaiser window, flat to 0.427 of the sample rate, at
 * least 100 dB down from 0.5 of it, without delay.
 */
final class Decimator {
    private static final double PASS_SHARE = 0.427;
    private static final double STOP_SHARE = 0.5;
    private static final double STOP_DB = 100;

    private final int factor;
    private final double[] taps;

    Decimator(int factor) {
        this.factor = factor;
        double transition = 2 * Math.PI * (STOP_SHARE - PASS_SHARE) / factor;
        int half = (int) Math.ceil((STOP_DB - 7.95) / (2.285 * transition) / 2);
        double beta = 0.1102 * (STOP_DB - 8.7);
        double cut = (PASS_SHARE + STOP_SHARE) / factor;
        this.taps = new double[2 * half + 1];
        double sum = 0;
        for (int i = 0; i < taps.length; i++) {
            int n = i - half;
            double sinc = n == 0 ? cut : Math.sin(Math.PI * cut * n) / (Math.PI * n);
            double at = n / (double) half;
            taps[i] = sinc * bessel(beta * Math.sqrt(Math.max(0, 1 - at * at)));
            sum += taps[i];
        }
        for (int i = 0; i < taps.length; i++) {
            taps[i] /= sum;
        }
    }

    /** Fine steps that are needed before the first and after the last sample. */
    int margin() {
        return taps.length / 2;
    }

    /** Returns samples of a wave that begins a margin before the first of them. */
    double[] samples(double[] fine, int count) {
        double[] samples = new double[count];
        for (int i = 0; i < count; i++) {
            double sum = 0;
            for (int k = 0; k < taps.length; k++) {
                sum += taps[k] * fine[i * factor + k];
            }
            samples[i] = sum;
        }
        return samples;
    }

    /** The modified Bessel function of order zero, by its power series. */
    private static double bessel(double x) {
        double term = 1;
        double sum = 1;
        for (int k = 1; term > 1e-17 * sum; k++) {
            term *= x / (2 * k) * (x / (2 * k));
            sum += term;
        }
        return sum;
    }
}
