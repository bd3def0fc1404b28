// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;
import java.util.Locale;

/**
 * Windows for spectra, in the periodic form w(i) = sum of a_j cos(2 pi j i / N) with alternating signs, scaled to a
 * largest value of one.
 */
public enum Window {
    /** No weighting: finest resolution, slowly falling leakage. */
    RECTANGULAR(1),
    /** Hann: 0.5, 0.5. */
    HANN(0.5, 0.5),
    /** Four-term Blackman-Harris, side lobes at -92 dB (Harris 1978). */
    BLACKMAN_HARRIS_4(0.35875, 0.48829, 0.14128, 0.01168),
    /** Flat-top of ISO 18431-2: amplitude right to 0.01 dB at any frequency, coarse resolution. */
    FLAT_TOP(1, 1.933, 1.286, 0.388, 0.0322);

    private static final int MOST_TERMS = 5;
    /** Weights are worked out in blocks from one cosine and sine each, so that rounding does not grow. */
    private static final int BLOCK = 256;

    /** The weights of a short record are kept, since many of the same length follow one another in a run. */
    private static final int MOST_KEPT = 1 << 15;

    private final double[] terms;
    /** Centred ones of the last short record; replaced as a whole, never written to. */
    private volatile double[] lastWeights = {};

    /** Factors of the powers of the cosine. */
    private final double[] powers;

    Window(double... terms) {
        double peak = 0;
        for (double term : terms) {
            peak += term;
        }
        this.terms = new double[terms.length];
        for (int j = 0; j < terms.length; j++) {
            this.terms[j] = terms[j] / peak;
        }
        double[] a = Arrays.copyOf(this.terms, MOST_TERMS);
        // cos(2x) = 2c^2 - 1, cos(3x) = 4c^3 - 3c, cos(4x) = 8c^4 - 8c^2 + 1.
        powers = new double[] {a[0] - a[2] + a[4], a[1] - 3 * a[3], 2 * a[2] - 8 * a[4], 4 * a[3], 8 * a[4]};
    }

    /** Returns a copy of the coefficients a_j, all positive, that add up to one. */
    public double[] coefficients() {
        return terms.clone();
    }

    /** Returns the mean of the window, the factor by which it lowers a spectral line: a_0. */
    public double coherentGain() {
        return terms[0];
    }

    /** Returns the equivalent noise bandwidth in bins: (a_0^2 + sum of a_j^2 / 2) / a_0^2. */
    public double noiseBandwidthBins() {
        double sum = 0;
        for (int j = 1; j < terms.length; j++) {
            sum += terms[j] * terms[j] / 2;
        }
        return 1 + sum / (terms[0] * terms[0]);
    }

    /** Returns half the width of the main lobe in bins: 1 for no weighting, one more for each cosine term. */
    public int mainLobeHalfWidthBins() {
        return terms.length;
    }

    /**
     * Returns the weights of the periodic form: the first is that of the minimum, and the one that would follow the
     * last equals the first.
     *
     * @param size number of weights, at least 1
     * @throws IllegalArgumentException if the size is below 1
     */
    public double[] weights(int size) {
        if (size < 1) {
            throw new IllegalArgumentException(String.format(Locale.ROOT, "size must be 1 or above, but is %d", size));
        }
        // The sign alternates, which is the same as a shift of half the length.
        return weights(size, -0.5 * size, null);
    }

    /** Weights placed symmetrically about the middle of the record, as a least-squares fit wants them. */
    double[] centredWeights(int size) {
        return weights(size, -0.5 * (size - 1), null);
    }

    /** The samples, each times its {@linkplain #centredWeights centred weight}; the same array where all weights are one. */
    double[] centredProducts(double[] samples) {
        if (this == RECTANGULAR) {
            return samples;
        }
        if (samples.length > MOST_KEPT) {
            return weights(samples.length, -0.5 * (samples.length - 1), samples);
        }
        double[] weights = lastWeights;
        if (weights.length != samples.length) {
            weights = centredWeights(samples.length);
            lastWeights = weights;
        }
        double[] products = new double[samples.length];
        for (int i = 0; i < products.length; i++) {
            products[i] = samples[i] * weights[i];
        }
        return products;
    }

    /**
     * Weights at instants that follow one another, from one on that is counted from the middle of the window.
     *
     * @param samples what each weight is multiplied with, or null
     */
    private double[] weights(int size, double from, double[] samples) {
        double[] weights = new double[size];
        if (this == RECTANGULAR) {
            Arrays.fill(weights, 1);
            return weights;
        }
        double step = 2 * Math.PI / size;
        double[] cosines = new double[Math.min(BLOCK, size)];
        double[] sines = new double[cosines.length];
        for (int k = 0; k < cosines.length; k++) {
            cosines[k] = Math.cos(step * k);
            sines[k] = Math.sin(step * k);
        }
        for (int start = 0; start < size; start += BLOCK) {
            double cosine = Math.cos(step * (start + from));
            double sine = Math.sin(step * (start + from));
            int count = Math.min(BLOCK, size - start);
            fill(weights, start, count, cosine, sine, new double[][] {cosines, sines});
            for (int i = start; samples != null && i < start + count; i++) {
                weights[i] *= samples[i];
            }
        }
        return weights;
    }

    private void fill(double[] weights, int start, int count, double cosine, double sine, double[][] turns) {
        double a = powers[0];
        double b = powers[1];
        double c = powers[2];
        double d = powers[3];
        double e = powers[4];
        double[] cosines = turns[0];
        double[] sines = turns[1];
        for (int k = 0; k < count; k++) {
            // The sum of a_j cos(j x) out of cos(x).
            double x = cosine * cosines[k] - sine * sines[k];
            weights[start + k] = a + x * (b + x * (c + x * (d + x * e)));
        }
    }

    /** Sum over centred sample instants t of w(t) cos(theta t), in closed form. */
    double centredKernel(int size, double theta) {
        double sum = terms[0] * DirichletKernel.value(size, theta);
        for (int j = 1; j < terms.length; j++) {
            double step = 2 * Math.PI * j / size;
            sum += 0.5
                    * terms[j]
                    * (DirichletKernel.value(size, theta + step) + DirichletKernel.value(size, theta - step));
        }
        return sum;
    }

    /** The same sum and its first and second derivative by theta, into three elements. */
    void centredKernels(int size, double theta, double[] elements) {
        Arrays.fill(elements, 0);
        DirichletKernel.add(size, theta, terms[0], elements);
        for (int j = 1; j < terms.length; j++) {
            double step = 2 * Math.PI * j / size;
            DirichletKernel.add(size, theta + step, 0.5 * terms[j], elements);
            DirichletKernel.add(size, theta - step, 0.5 * terms[j], elements);
        }
    }
}
