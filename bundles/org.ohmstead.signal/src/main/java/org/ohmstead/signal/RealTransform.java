// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** The discrete Fourier transform of real samples. */
final class RealTransform {
    private static final TransformPlans PLANS = new TransformPlans();

    private RealTransform() {}

    /** Returns the smallest power of two that is not below the size. */
    static int paddedSize(int size) {
        return size <= 1 ? 1 : Integer.highestOneBit(size - 1) << 1;
    }

    /**
     * Replaces the samples by their transform and returns |X_k|^2 for k = 0 to n/2.
     *
     * @param samples at least one; overwritten
     */
    static double[] squaredMagnitudes(double[] samples) {
        int size = samples.length;
        if (size == 1) {
            return new double[] {samples[0] * samples[0]};
        }
        PLANS.realForward(samples);
        double[] squares = new double[size / 2 + 1];
        squares[0] = samples[0] * samples[0];
        if (size % 2 == 0) {
            squares[size / 2] = samples[1] * samples[1];
            for (int k = 1; k < size / 2; k++) {
                squares[k] = samples[2 * k] * samples[2 * k] + samples[2 * k + 1] * samples[2 * k + 1];
            }
        } else {
            int last = size / 2;
            for (int k = 1; k < last; k++) {
                squares[k] = samples[2 * k] * samples[2 * k] + samples[2 * k + 1] * samples[2 * k + 1];
            }
            if (last > 0) {
                // An odd length stores the last imaginary part in the second element.
                squares[last] = samples[2 * last] * samples[2 * last] + samples[1] * samples[1];
            }
        }
        return squares;
    }
}
