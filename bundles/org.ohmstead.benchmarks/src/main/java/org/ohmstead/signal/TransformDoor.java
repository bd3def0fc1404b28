// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** Lets benchmarks at the transform that analyses use, whatever does it inside: it is no API. */
public final class TransformDoor {
    private final double[] real;
    private final double[] imaginary;

    /**
     * Makes a door with room for the results.
     *
     * @param size how many samples, a product of 2, 3 and 5
     */
    public TransformDoor(int size) {
        real = new double[size / 2 + 1];
        imaginary = new double[size / 2 + 1];
    }

    /** Transforms real samples, which are kept, and returns the real parts. */
    public double[] forward(double[] samples) {
        RealTransform.forward(samples, real, imaginary);
        return real;
    }

    /** Returns |X_k|^2 for k = 0 to n/2, as analyses take it; the samples may be overwritten. */
    public static double[] squaredMagnitudes(double[] samples) {
        return RealTransform.squaredMagnitudes(samples);
    }
}
