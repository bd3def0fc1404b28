// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;

/**
 * The functions 1, cos(n w t), sin(n w t) for n = 1 to some order, at sample instants t counted from the middle of the
 * record. Works in blocks of an odd number of samples: inside a block from a table of cosines and sines counted from
 * the block's own middle, which serves both halves of the block, and from block to block by an exact rotation, so
 * rounding does not grow with the length of the record.
 */
final class HarmonicBasis {
    private static final int MOST_REACH = 256;
    private static final int LEAST_REACH = 16;
    /** A table of this many numbers stays in the processor's cache. */
    private static final int MOST_TABLE = 1 << 14;

    private static final int FINE_STEPS = 16;

    private final int size;
    private final int orders;
    private final double radiansPerSample;
    /** Samples of a block on each side of its middle. */
    private final int reach;

    /** Made when they are first wanted. */
    private double[][] cosineRows;

    private double[][] sineRows;

    HarmonicBasis(int size, double radiansPerSample, int orders) {
        this.size = size;
        this.orders = orders;
        this.radiansPerSample = radiansPerSample;
        int fitting = Math.max(LEAST_REACH, Math.min(MOST_REACH, MOST_TABLE / (2 * orders)));
        this.reach = Math.min(fitting, (size - 1) / 2);
    }

    private void fillRows() {
        if (cosineRows != null) {
            return;
        }
        cosineRows = new double[reach + 1][orders];
        sineRows = new double[reach + 1][orders];
        double[] fineCosines = new double[FINE_STEPS];
        double[] fineSines = new double[FINE_STEPS];
        for (int k = 0; k < FINE_STEPS; k++) {
            fineCosines[k] = Math.cos(radiansPerSample * k);
            fineSines[k] = Math.sin(radiansPerSample * k);
        }
        for (int start = 0; start <= reach; start += FINE_STEPS) {
            double cosine = Math.cos(radiansPerSample * start);
            double sine = Math.sin(radiansPerSample * start);
            for (int k = 0; k < Math.min(FINE_STEPS, reach + 1 - start); k++) {
                multiples(
                        cosine * fineCosines[k] - sine * fineSines[k],
                        sine * fineCosines[k] + cosine * fineSines[k],
                        cosineRows[start + k],
                        sineRows[start + k]);
            }
        }
    }

    /** Writes the cosines and the sines of 1 to {@code orders} times an angle. */
    static void multiples(double cosineStep, double sineStep, double[] cosines, double[] sines) {
        double cosine = cosineStep;
        double sine = sineStep;
        for (int n = 0; n < cosines.length; n++) {
            cosines[n] = cosine;
            sines[n] = sine;
            double next = cosine * cosineStep - sine * sineStep;
            sine = sine * cosineStep + cosine * sineStep;
            cosine = next;
        }
    }

    int size() {
        return size;
    }

    int orders() {
        return orders;
    }

    double radiansPerSample() {
        return radiansPerSample;
    }

    private double middle() {
        return 0.5 * (size - 1);
    }

    /** Samples on each side of the middle of the block that begins at an index: whole blocks, then what is left. */
    private int reachAt(int start) {
        return Math.min(reach, (size - start - 1) / 2);
    }

    /** Sums of the samples times each function: element 0 the plain sum, n the cosine, orders + n the sine of n. */
    double[] project(double[] samples) {
        if (size >= ColumnProjection.LEAST_SAMPLES) {
            return ColumnProjection.sums(samples, radiansPerSample, orders);
        }
        fillRows();
        double[] sums = new double[2 * orders + 1];
        double[] localCosines = new double[orders];
        double[] localSines = new double[orders];
        double[] cosines = new double[orders];
        double[] sines = new double[orders];
        int start = 0;
        while (start < size) {
            int near = reachAt(start);
            int centre = start + near;
            sums[0] += projectBlock(samples, centre, near, localCosines, localSines);
            double angle = radiansPerSample * (centre - middle());
            multiples(Math.cos(angle), Math.sin(angle), cosines, sines);
            for (int n = 0; n < orders; n++) {
                sums[n + 1] += cosines[n] * localCosines[n] - sines[n] * localSines[n];
                sums[orders + n + 1] += sines[n] * localCosines[n] + cosines[n] * localSines[n];
            }
            start = centre + near + 1;
        }
        return sums;
    }

    /** Sums over one block, with time counted from its middle, and returns the plain sum. */
    private double projectBlock(double[] samples, int centre, int near, double[] cosines, double[] sines) {
        double plain = samples[centre];
        Arrays.fill(cosines, plain);
        Arrays.fill(sines, 0);
        int k = 1;
        for (; k < near; k += 2) {
            plain += addTwoPairs(samples, centre, k, cosines, sines);
        }
        if (k == near) {
            plain += addPair(samples[centre + k], samples[centre - k], k, cosines, sines);
        }
        return plain;
    }

    /** The samples at a distance from the middle of the block and at the next: the sums are fetched half as often. */
    private double addTwoPairs(double[] samples, int centre, int distance, double[] cosines, double[] sines) {
        double even = samples[centre + distance] + samples[centre - distance];
        double odd = samples[centre + distance] - samples[centre - distance];
        double nextEven = samples[centre + distance + 1] + samples[centre - distance - 1];
        double nextOdd = samples[centre + distance + 1] - samples[centre - distance - 1];
        addMultiples(even, cosineRows[distance], nextEven, cosineRows[distance + 1], cosines);
        addMultiples(odd, sineRows[distance], nextOdd, sineRows[distance + 1], sines);
        return even + nextEven;
    }

    private static void addMultiples(
            double factor, double[] row, double nextFactor, double[] nextRow, double[] target) {
        for (int n = 0; n < target.length; n++) {
            target[n] += factor * row[n] + nextFactor * nextRow[n];
        }
    }

    private double addPair(double after, double before, int distance, double[] cosines, double[] sines) {
        double[] cosineRow = cosineRows[distance];
        double[] sineRow = sineRows[distance];
        for (int n = 0; n < orders; n++) {
            cosines[n] += (after + before) * cosineRow[n];
            sines[n] += (after - before) * sineRow[n];
        }
        return after + before;
    }

    /** The sum of the functions with the given factors (same order as in {@link #project}), at every instant. */
    double[] synthesize(double[] factors) {
        fillRows();
        double[] samples = new double[size];
        double[] localCosines = new double[orders];
        double[] localSines = new double[orders];
        double[] cosines = new double[orders];
        double[] sines = new double[orders];
        int start = 0;
        while (start < size) {
            int near = reachAt(start);
            int centre = start + near;
            double angle = radiansPerSample * (centre - middle());
            multiples(Math.cos(angle), Math.sin(angle), cosines, sines);
            double plain = factors[0];
            for (int n = 0; n < orders; n++) {
                double ofCosine = factors[n + 1];
                double ofSine = factors[orders + n + 1];
                localCosines[n] = ofCosine * cosines[n] + ofSine * sines[n];
                localSines[n] = ofSine * cosines[n] - ofCosine * sines[n];
                plain += localCosines[n];
            }
            samples[centre] = plain;
            for (int k = 1; k <= near; k++) {
                mirror(localCosines, localSines, k, factors[0], samples, centre);
            }
            start = centre + near + 1;
        }
        return samples;
    }

    /** Both samples at a distance from the middle of a block; their sums run side by side. */
    private void mirror(
            double[] localCosines, double[] localSines, int distance, double plain, double[] target, int centre) {
        double[] cosineRow = cosineRows[distance];
        double[] sineRow = sineRows[distance];
        double even = plain;
        double odd = 0;
        for (int n = 0; n < orders; n++) {
            even += localCosines[n] * cosineRow[n];
            odd += localSines[n] * sineRow[n];
        }
        target[centre + distance] = even + odd;
        target[centre - distance] = even - odd;
    }

    /** The derivative of {@link #synthesize} by the angular frequency in radians per sample. */
    double[] frequencyDerivative(double[] factors) {
        double[] turned = new double[2 * orders + 1];
        for (int n = 1; n <= orders; n++) {
            turned[n] = n * factors[orders + n];
            turned[orders + n] = -n * factors[n];
        }
        double[] derivative = synthesize(turned);
        double middle = middle();
        for (int i = 0; i < size; i++) {
            derivative[i] *= i - middle;
        }
        return derivative;
    }

    /** Factors the weighted products of the functions with one another, which the window has in closed form. */
    Normal normal(Window window) {
        double[] kernel = new double[2 * orders + 1];
        for (int m = 0; m <= 2 * orders; m++) {
            kernel[m] = window.centredKernel(size, m * radiansPerSample);
        }
        return Normal.of(kernel, orders);
    }

    /** The normal equations; cosines and sines do not mix because time is counted from the middle. */
    record Normal(CholeskyFactor cosines, CholeskyFactor sines, int orders) {
        /** Factors the products of the functions, from the window's kernel at 0 to 2 * orders times the frequency. */
        static Normal of(double[] kernel, int orders) {
            double[][] cosines = new double[orders + 1][orders + 1];
            double[][] sines = new double[orders][orders];
            for (int m = 0; m <= orders; m++) {
                for (int n = m; n <= orders; n++) {
                    double difference = kernel[n - m];
                    cosines[m][n] = 0.5 * (difference + kernel[m + n]);
                    if (m > 0) {
                        sines[m - 1][n - 1] = 0.5 * (difference - kernel[m + n]);
                    }
                }
            }
            return new Normal(new CholeskyFactor(cosines), new CholeskyFactor(sines), orders);
        }

        double[] solve(double[] sums) {
            double[] even = cosines.solve(Arrays.copyOf(sums, orders + 1));
            double[] odd = sines.solve(Arrays.copyOfRange(sums, orders + 1, 2 * orders + 1));
            double[] factors = Arrays.copyOf(even, 2 * orders + 1);
            System.arraycopy(odd, 0, factors, orders + 1, orders);
            return factors;
        }
    }
}
