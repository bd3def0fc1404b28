// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** The discrete Fourier transform of real samples. */
final class RealTransform {
    private static final TransformPlans PLANS = new TransformPlans();
    private static final SmoothPlans SMOOTH_PLANS = new SmoothPlans();
    /** Products of these with a power of two are near enough to any size. */
    private static final int[] ODD_FACTORS = {1, 3, 5, 9, 15, 25, 27, 45, 75, 81, 125};

    private RealTransform() {}

    /** Returns a size that is not below the given one, and little above, and that is transformed quickly. */
    static int paddedSize(int size) {
        int best = size <= 1 ? 1 : Integer.highestOneBit(size - 1) << 1;
        for (int odd : ODD_FACTORS) {
            int parts = (size + odd - 1) / odd;
            int padded = odd * (parts <= 1 ? 1 : Integer.highestOneBit(parts - 1) << 1);
            best = SmoothTransform.serves(padded) ? Math.min(best, padded) : best;
        }
        return best;
    }

    /**
     * Writes the transform of the samples for k = 0 to n/2.
     *
     * @param samples of a size that {@link SmoothTransform} serves
     */
    static void forward(double[] samples, double[] real, double[] imaginary) {
        SmoothTransform plan = SMOOTH_PLANS.take(samples.length);
        plan.forward(samples, real, imaginary);
        SMOOTH_PLANS.giveBack(plan);
    }

    /**
     * Returns |X_k|^2 of the samples for k = 0 to n/2.
     *
     * @param samples at least one; may be overwritten
     */
    static double[] squaredMagnitudes(double[] samples) {
        int size = samples.length;
        if (size == 1) {
            return new double[] {samples[0] * samples[0]};
        }
        if (SmoothTransform.serves(size)) {
            double[] real = new double[size / 2 + 1];
            double[] imaginary = new double[size / 2 + 1];
            forward(samples, real, imaginary);
            for (int k = 0; k < real.length; k++) {
                real[k] = real[k] * real[k] + imaginary[k] * imaginary[k];
            }
            return real;
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
