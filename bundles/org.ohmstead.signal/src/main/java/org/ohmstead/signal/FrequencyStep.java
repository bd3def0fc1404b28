// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * One Gauss-Newton step of the frequency that the functions of a {@link HarmonicBasis} share, with their factors
 * eliminated. The products of the functions with one another and with their derivatives by the frequency are sums of
 * cos, t sin and t^2 cos, that is, the window's kernel and its derivatives in closed form, so the samples are gone
 * through only for their own products with the functions.
 */
final class FrequencyStep {
    private final int orders;
    private final double[] plain;
    private final double[] first;
    private final double[] second;
    private final double[] factors;
    private double slope;
    private double curvature;

    /**
     * Evaluates a step.
     *
     * @param products the samples times the window
     * @param moments the same, each times its instant counted from the middle of the record
     * @throws ArithmeticException if the functions cannot be told apart
     */
    FrequencyStep(HarmonicBasis basis, Window window, double[] products, double[] moments) {
        this(basis.size(), basis.radiansPerSample(), window, basis.project(products), basis.project(moments));
    }

    /**
     * Evaluates a step from sums, as {@link HarmonicBasis#project} has them.
     *
     * @param size number of samples
     * @param frequency radians per sample
     * @param sums of the samples times the window
     * @param momentSums the same, each times its instant counted from the middle of the record
     * @throws ArithmeticException if the functions cannot be told apart
     */
    FrequencyStep(int size, double frequency, Window window, double[] sums, double[] momentSums) {
        orders = sums.length / 2;
        int kernels = 2 * orders + 1;
        plain = new double[kernels];
        first = new double[kernels];
        second = new double[kernels];
        double[] elements = new double[3];
        for (int m = 0; m < kernels; m++) {
            window.centredKernels(size, m * frequency, elements);
            plain[m] = elements[0];
            first[m] = elements[1];
            second[m] = elements[2];
        }
        HarmonicBasis.Normal normal = HarmonicBasis.Normal.of(plain, orders);
        factors = normal.solve(sums);
        derive(momentSums, normal);
    }

    private void derive(double[] momentSums, HarmonicBasis.Normal normal) {
        // Factors of t cos and t sin in the derivative of the model.
        double[] cosines = new double[orders + 1];
        double[] sines = new double[orders + 1];
        for (int n = 1; n <= orders; n++) {
            cosines[n] = n * factors[orders + n];
            sines[n] = -n * factors[n];
            slope += cosines[n] * momentSums[n] + sines[n] * momentSums[orders + n];
        }
        double[] mixed = new double[2 * orders + 1];
        for (int m = 0; m <= orders; m++) {
            double withCosine = 0;
            double withSine = 0;
            double square = 0;
            for (int n = 1; n <= orders; n++) {
                int distance = Math.abs(n - m);
                // The sum of t sin is odd in the angle.
                double difference = n < m ? -first[distance] : first[distance];
                withCosine += sines[n] * (first[n + m] + difference);
                withSine += cosines[n] * (first[n + m] - difference);
                square += cosines[m] * cosines[n] * (second[distance] + second[n + m])
                        + sines[m] * sines[n] * (second[distance] - second[n + m]);
            }
            mixed[m] = -0.5 * withCosine;
            if (m > 0) {
                mixed[orders + m] = -0.5 * withSine;
            }
            curvature -= 0.5 * square;
        }
        double[] explained = normal.solve(mixed);
        for (int i = 0; i < mixed.length; i++) {
            slope -= mixed[i] * factors[i];
            curvature -= mixed[i] * explained[i];
        }
    }

    /** Whether the samples say anything about the frequency. */
    boolean isDetermined() {
        return curvature > 0;
    }

    /** What the frequency is to be changed by, in radians per sample. */
    double radiansPerSample() {
        return slope / curvature;
    }
}
