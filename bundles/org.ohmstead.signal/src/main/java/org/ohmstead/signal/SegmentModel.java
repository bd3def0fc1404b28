// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;

/**
 * What is left of a segment when direct voltage, cosines and sines are taken off it, as {@link HarmonicBasis} puts them together, but with
 * tables that are used again for each segment. They run along the samples of a block, so that the inner loops are long.
 */
final class SegmentModel {
    /** Samples of a block on each side of its middle: the tables stay in the processor's cache. */
    private static final int REACH = 128;

    private final int size;
    private final double[][] cosines;
    private final double[][] sines;
    private final double[] even = new double[REACH + 1];
    private final double[] odd = new double[REACH + 1];
    private final double[] turnedCosines;
    private final double[] turnedSines;
    private double radiansPerSample;
    private int orders;

    SegmentModel(int size, int mostOrders) {
        this.size = size;
        // Two orders are done at a time: behind an odd number of them a row of zeros is read.
        cosines = new double[mostOrders + 2][REACH + 1];
        sines = new double[mostOrders + 2][REACH + 1];
        turnedCosines = new double[mostOrders + 2];
        turnedSines = new double[mostOrders + 2];
    }

    /** Sets the frequency, and how many orders there are. */
    void set(double radians, int count) {
        radiansPerSample = radians;
        orders = count;
        for (int k = 0; k <= REACH; k++) {
            double cosineStep = Math.cos(radians * k);
            double sineStep = Math.sin(radians * k);
            double cosine = cosineStep;
            double sine = sineStep;
            for (int n = 1; n <= orders; n++) {
                cosines[n][k] = cosine;
                sines[n][k] = sine;
                double next = cosine * cosineStep - sine * sineStep;
                sine = sine * cosineStep + cosine * sineStep;
                cosine = next;
            }
        }
        Arrays.fill(cosines[orders + 1], 0);
        Arrays.fill(sines[orders + 1], 0);
    }

    /** Cosines and sines of each order at the middle of a block. */
    private void turnTo(int centre) {
        double angle = radiansPerSample * (centre - 0.5 * (size - 1));
        double cosineStep = Math.cos(angle);
        double sineStep = Math.sin(angle);
        double cosine = cosineStep;
        double sine = sineStep;
        for (int n = 1; n <= orders; n++) {
            turnedCosines[n] = cosine;
            turnedSines[n] = sine;
            double next = cosine * cosineStep - sine * sineStep;
            sine = sine * cosineStep + cosine * sineStep;
            cosine = next;
        }
    }

    private int reachAt(int start) {
        return Math.min(REACH, (size - start - 1) / 2);
    }

    /** The samples less the functions with the given factors (same order as in {@link HarmonicBasis#project}). */
    double[] residual(double[] samples, double[] factors) {
        double[] residual = new double[size];
        int start = 0;
        while (start < size) {
            int reach = reachAt(start);
            int centre = start + reach;
            turnTo(centre);
            Arrays.fill(even, factors[0]);
            Arrays.fill(odd, 0);
            for (int n = 1; n <= orders; n += 2) {
                boolean two = n < orders;
                add(even, evenFactor(n, factors), cosines[n], two ? evenFactor(n + 1, factors) : 0, cosines[n + 1]);
                add(odd, oddFactor(n, factors), sines[n], two ? oddFactor(n + 1, factors) : 0, sines[n + 1]);
            }
            residual[centre] = samples[centre] - even[0];
            for (int k = 1; k <= reach; k++) {
                residual[centre + k] = samples[centre + k] - even[k] - odd[k];
                residual[centre - k] = samples[centre - k] - even[k] + odd[k];
            }
            start = centre + reach + 1;
        }
        return residual;
    }

    private double evenFactor(int order, double[] factors) {
        return factors[order] * turnedCosines[order] + factors[orders + order] * turnedSines[order];
    }

    private double oddFactor(int order, double[] factors) {
        return factors[orders + order] * turnedCosines[order] - factors[order] * turnedSines[order];
    }

    private static void add(double[] target, double factor, double[] row, double nextFactor, double[] nextRow) {
        for (int k = 0; k < target.length; k++) {
            target[k] += factor * row[k] + nextFactor * nextRow[k];
        }
    }
}
