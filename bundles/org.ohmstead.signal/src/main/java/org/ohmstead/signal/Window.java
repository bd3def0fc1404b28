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

    private final double[] terms;

    Window(double... terms) {
        double peak = 0;
        for (double term : terms) {
            peak += term;
        }
        this.terms = new double[terms.length];
        for (int j = 0; j < terms.length; j++) {
            this.terms[j] = terms[j] / peak;
        }
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
        double[] weights = new double[size];
        for (int i = 0; i < size; i++) {
            // The sign alternates, which is the same as a shift of half the length.
            weights[i] = at((i - 0.5 * size) / size);
        }
        return weights;
    }

    /** Weights placed symmetrically about the middle of the record, as a least-squares fit wants them. */
    double[] centredWeights(int size) {
        double[] weights = new double[size];
        double middle = 0.5 * (size - 1);
        for (int i = 0; i <= size - 1 - i; i++) {
            weights[i] = at((i - middle) / size);
            weights[size - 1 - i] = weights[i];
        }
        return weights;
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

    private double at(double position) {
        double first = Math.cos(2 * Math.PI * position);
        double previous = 1;
        double current = first;
        double sum = terms[0];
        for (int j = 1; j < terms.length; j++) {
            sum += terms[j] * current;
            double next = 2 * first * current - previous;
            previous = current;
            current = next;
        }
        return sum;
    }
}
