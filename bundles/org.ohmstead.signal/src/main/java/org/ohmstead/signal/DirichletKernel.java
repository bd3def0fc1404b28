// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * The sum of cos(theta t) over the instants t of a record counted from its middle, which is sin(N theta / 2) /
 * sin(theta / 2), and its first and second derivative by theta.
 */
final class DirichletKernel {
    /** Below this angle over the whole record the quotients lose digits, and the power series is exact enough. */
    private static final double SERIES_ANGLE = 0.02;

    private static final double TURN = 2 * Math.PI;

    private DirichletKernel() {}

    /** Returns the sum itself. */
    static double value(int size, double theta) {
        double turns = Math.rint(theta / TURN);
        double half = (theta - turns * TURN) / 2;
        double sign = sign(size, turns);
        if (Math.abs(half) < 1e-12) {
            return sign * size;
        }
        return sign * Math.sin(size * half) / Math.sin(half);
    }

    /** Adds the sum and its two derivatives, times a factor, to the three elements. */
    static void add(int size, double theta, double factor, double[] elements) {
        double turns = Math.rint(theta / TURN);
        double rest = theta - turns * TURN;
        double signed = factor * sign(size, turns);
        if (Math.abs(rest) * size < SERIES_ANGLE) {
            // Sums of t^2 and t^4 in closed form.
            double square = (double) size * size;
            double second = size * (square - 1) / 12;
            double fourth = second * (3 * square - 7) / 20;
            double restSquare = rest * rest;
            elements[0] += signed * (size - restSquare * (second / 2 - restSquare * fourth / 24));
            elements[1] -= signed * rest * (second - restSquare * fourth / 6);
            elements[2] -= signed * (second - restSquare * fourth / 2);
            return;
        }
        double half = rest / 2;
        double sine = Math.sin(half);
        double cosine = Math.cos(half);
        double wideSine = Math.sin(size * half);
        double value = wideSine / sine;
        double first = 0.5 * (size * Math.cos(size * half) - cosine * value) / sine;
        // From the second derivative of sin(theta / 2) D = sin(N theta / 2).
        double second = 0.25 * value - (0.25 * size * size * wideSine + cosine * first) / sine;
        elements[0] += signed * value;
        elements[1] += signed * first;
        elements[2] += signed * second;
    }

    /** Over a full turn the kernel of an even number of half-integer instants changes its sign. */
    private static double sign(int size, double turns) {
        return size % 2 == 0 && turns % 2 != 0 ? -1 : 1;
    }
}
