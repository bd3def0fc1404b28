// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * The steps that Fourier transforms are made of, each on many columns side by side. They are cut so that Java's compiler makes them work on
 * several columns at once: few rows in a loop, and no value multiplied twice in the same round. The latter is why a turn by a complex factor
 * is made of one of its parts and of the ratio of the two.
 */
final class Butterflies {
    private static final double SINE_THIRD = Math.sqrt(3) / 2;
    private static final double SINE_FIFTH = Math.sqrt(10 + 2 * Math.sqrt(5)) / 4;
    /** That of two fifths to that of one. */
    private static final double SINE_RATIO = (Math.sqrt(5) - 1) / 2;
    /** Half the difference between the cosines of one and of two fifths; half their sum is a quarter, negative. */
    private static final double COSINE_HALF_DIFFERENCE = Math.sqrt(5) / 4;

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
        if (Math.abs(wr) >= Math.abs(wi)) {
            turnLittle(re, im, wi / wr, wr, width);
        } else {
            turnMuch(re, im, wr / wi, wi, width);
        }
    }

    /** Multiplies by 1 + i ratio, and by a real factor. */
    private static void turnLittle(double[] re, double[] im, double ratio, double factor, int width) {
        for (int q = 0; q < width; q++) {
            double real = re[q];
            double imaginary = im[q];
            re[q] = (real - imaginary * ratio) * factor;
            im[q] = (real * ratio + imaginary) * factor;
        }
    }

    /** Multiplies by ratio + i, and by a real factor. */
    private static void turnMuch(double[] re, double[] im, double ratio, double factor, int width) {
        for (int q = 0; q < width; q++) {
            double real = re[q];
            double imaginary = im[q];
            re[q] = (real * ratio - imaginary) * factor;
            im[q] = (real + imaginary * ratio) * factor;
        }
    }

    /** Multiplies each column by its own factor; the real parts go to another place. */
    static void turnEach(double[] re, double[] im, double[] cosines, double[] sines, double[] real, int width) {
        for (int q = 0; q < width; q++) {
            real[q] = re[q] * cosines[q] - im[q] * sines[q];
        }
        for (int q = 0; q < width; q++) {
            im[q] = re[q] * sines[q] + im[q] * cosines[q];
        }
    }

    /** Of a transform of three, real or imaginary parts: a becomes the sum of all, b and c the even and the odd part of the others. */
    static void third(double[] a, double[] b, double[] c, int width) {
        for (int q = 0; q < width; q++) {
            double first = a[q];
            double sum = b[q] + c[q];
            double difference = b[q] - c[q];
            a[q] = first + sum;
            b[q] = first - 0.5 * sum;
            c[q] = SINE_THIRD * difference;
        }
    }

    /**
     * Of a transform of four, real or imaginary parts in four rows from one on, so far apart: the first and third become the results, the
     * others the even and the odd part of what is left.
     */
    static void fourth(double[][] rows, int at, int part, int width) {
        double[] a = rows[at];
        double[] b = rows[at + part];
        double[] c = rows[at + 2 * part];
        double[] d = rows[at + 3 * part];
        for (int q = 0; q < width; q++) {
            double outer = a[q] + c[q];
            double outerDifference = a[q] - c[q];
            double inner = b[q] + d[q];
            double innerDifference = b[q] - d[q];
            a[q] = outer + inner;
            b[q] = outerDifference;
            c[q] = outer - inner;
            d[q] = innerDifference;
        }
    }

    /** Of a transform of five, from the first element and the sums of the outer and inner pair: the sum of all, and the even parts. */
    static void fifthEven(double[] first, double[] outer, double[] inner, int width) {
        for (int q = 0; q < width; q++) {
            double sum = outer[q] + inner[q];
            double difference = COSINE_HALF_DIFFERENCE * (outer[q] - inner[q]);
            double middle = first[q] - 0.25 * sum;
            first[q] += sum;
            outer[q] = middle + difference;
            inner[q] = middle - difference;
        }
    }

    /** Of a transform of five, from the differences of the outer and inner pair: the odd parts. */
    static void fifthOdd(double[] outer, double[] inner, int width) {
        for (int q = 0; q < width; q++) {
            double s = outer[q];
            double t = inner[q];
            outer[q] = SINE_FIFTH * (s + SINE_RATIO * t);
            inner[q] = SINE_FIFTH * (SINE_RATIO * s - t);
        }
    }
}
