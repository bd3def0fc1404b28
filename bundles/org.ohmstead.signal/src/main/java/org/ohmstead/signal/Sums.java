// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** Sums in several parts side by side: in one part each addition would wait for the one before. */
final class Sums {
    private Sums() {}

    /** Returns the sum of the values from one place (included) to another (excluded). */
    static double of(double[] values, int from, int to) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = from;
        for (; i < to - 3; i += 4) {
            a += values[i];
            b += values[i + 1];
            c += values[i + 2];
            d += values[i + 3];
        }
        for (; i < to; i++) {
            a += values[i];
        }
        return (a + b) + (c + d);
    }

    /** Returns the sum of the values, each less an offset, and the sum of the squares of these. */
    static double[] withSquares(double[] values, int from, int to, double offset) {
        double a = 0;
        double b = 0;
        double squareA = 0;
        double squareB = 0;
        double squareC = 0;
        double squareD = 0;
        int i = from;
        for (; i < to - 3; i += 4) {
            double first = values[i] - offset;
            double second = values[i + 1] - offset;
            double third = values[i + 2] - offset;
            double fourth = values[i + 3] - offset;
            a += first + second;
            b += third + fourth;
            squareA += first * first;
            squareB += second * second;
            squareC += third * third;
            squareD += fourth * fourth;
        }
        for (; i < to; i++) {
            double value = values[i] - offset;
            a += value;
            squareA += value * value;
        }
        return new double[] {a + b, (squareA + squareB) + (squareC + squareD)};
    }
}
