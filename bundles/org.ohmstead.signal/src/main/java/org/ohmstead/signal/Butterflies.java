// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * The steps of a Fourier transform of many columns at once. Each row of the columns is an array of its own, and a step goes along whole
 * rows with the same factors, in loops that are short enough for the virtual machine to do several columns in one instruction.
 */
final class Butterflies {
    private static final double SINE_THIRD = Math.sqrt(3) / 2;
    private static final double COSINE_FIFTH = (Math.sqrt(5) - 1) / 4;
    private static final double COSINE_TWO_FIFTHS = -(Math.sqrt(5) + 1) / 4;
    private static final double SINE_FIFTH = Math.sqrt(10 + 2 * Math.sqrt(5)) / 4;
    private static final double SINE_TWO_FIFTHS = Math.sqrt(10 - 2 * Math.sqrt(5)) / 4;

    private Butterflies() {}

    /** Replaces a and b by a + b and a - b. */
    static void cross(double[] ar, double[] ai, double[] br, double[] bi, int width) {
        for (int q = 0; q < width; q++) {
            double realA = ar[q];
            double imaginaryA = ai[q];
            double realB = br[q];
            double imaginaryB = bi[q];
            ar[q] = realA + realB;
            ai[q] = imaginaryA + imaginaryB;
            br[q] = realA - realB;
            bi[q] = imaginaryA - imaginaryB;
        }
    }

    /** Replaces a and b by a + b and (a - b) w. */
    static void crossTurned(double[] ar, double[] ai, double[] br, double[] bi, double wr, double wi, int width) {
        for (int q = 0; q < width; q++) {
            double real = ar[q] - br[q];
            double imaginary = ai[q] - bi[q];
            ar[q] += br[q];
            ai[q] += bi[q];
            br[q] = real * wr - imaginary * wi;
            bi[q] = real * wi + imaginary * wr;
        }
    }

    /** Replaces a and b by a - i b and a + i b. */
    static void crossQuarter(double[] ar, double[] ai, double[] br, double[] bi, int width) {
        for (int q = 0; q < width; q++) {
            double realA = ar[q];
            double imaginaryA = ai[q];
            double realB = br[q];
            double imaginaryB = bi[q];
            ar[q] = realA + imaginaryB;
            ai[q] = imaginaryA - realB;
            br[q] = realA - imaginaryB;
            bi[q] = imaginaryA + realB;
        }
    }

    /** Multiplies by w. */
    static void turn(double[] re, double[] im, double wr, double wi, int width) {
        for (int q = 0; q < width; q++) {
            double real = re[q];
            double imaginary = im[q];
            re[q] = real * wr - imaginary * wi;
            im[q] = real * wi + imaginary * wr;
        }
    }

    /** Multiplies by the product of w and each column's own factor. */
    static void turnEach(double[][] row, double[][] factors, double wr, double wi, int width) {
        double[] re = row[0];
        double[] im = row[1];
        double[] cosines = factors[0];
        double[] sines = factors[1];
        for (int q = 0; q < width; q++) {
            double turnReal = cosines[q] * wr - sines[q] * wi;
            double turnImaginary = cosines[q] * wi + sines[q] * wr;
            double real = re[q];
            double imaginary = im[q];
            re[q] = real * turnReal - imaginary * turnImaginary;
            im[q] = real * turnImaginary + imaginary * turnReal;
        }
    }

    /** Of a transform of three, from the first element and sum and difference of the others: the sum of all, and what is left. */
    static void third(double[] first, double[] sum, double[] difference, int width) {
        for (int q = 0; q < width; q++) {
            double a = first[q];
            double s = sum[q];
            first[q] = a + s;
            sum[q] = a - 0.5 * s;
            difference[q] *= SINE_THIRD;
        }
    }

    /** Of a transform of five, from the first element and the sums of the outer and inner pair: the sum of all, and the even parts. */
    static void fifthEven(double[] first, double[] outer, double[] inner, int width) {
        for (int q = 0; q < width; q++) {
            double a = first[q];
            double s = outer[q];
            double t = inner[q];
            first[q] = a + s + t;
            outer[q] = a + COSINE_FIFTH * s + COSINE_TWO_FIFTHS * t;
            inner[q] = a + COSINE_TWO_FIFTHS * s + COSINE_FIFTH * t;
        }
    }

    /** Of a transform of five, from the differences of the outer and inner pair: the odd parts. */
    static void fifthOdd(double[] outer, double[] inner, int width) {
        for (int q = 0; q < width; q++) {
            double s = outer[q];
            double t = inner[q];
            outer[q] = SINE_FIFTH * s + SINE_TWO_FIFTHS * t;
            inner[q] = SINE_TWO_FIFTHS * s - SINE_FIFTH * t;
        }
    }
}
