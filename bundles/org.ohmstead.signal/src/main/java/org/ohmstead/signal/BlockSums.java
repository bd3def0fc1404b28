// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;

/** Sums over equal blocks of a long record. Each sum starts anew, so rounding does not grow with the length of the record. */
final class BlockSums {
    private final double shiftVolts;
    private final long[] counts;
    private final double[] sums;
    private final double[] squares;
    private final double[] lows;
    private final double[] highs;
    private int size;

    /**
     * Begins.
     *
     * @param shiftVolts about the direct voltage: it is taken off before squaring, which keeps the digits
     * @param most number of blocks at most
     */
    BlockSums(double shiftVolts, int most) {
        this.shiftVolts = shiftVolts;
        counts = new long[most];
        sums = new double[most];
        squares = new double[most];
        lows = new double[most];
        highs = new double[most];
    }

    /** Adds the next block. */
    void add(double[] volts, int from, int count) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double sum = 0;
        double square = 0;
        for (int i = from; i < from + count; i++) {
            double shifted = volts[i] - shiftVolts;
            sum += shifted;
            square += shifted * shifted;
            low = volts[i] < low ? volts[i] : low;
            high = volts[i] > high ? volts[i] : high;
        }
        counts[size] = count;
        sums[size] = sum;
        squares[size] = square;
        lows[size] = low;
        highs[size] = high;
        size++;
    }

    int size() {
        return size;
    }

    /** The figures of some of the blocks. */
    Level level(boolean[] used, Level without) {
        double sum = -without.sum;
        double square = -without.square;
        long count = -without.count;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < size; k++) {
            if (used[k]) {
                sum += sums[k];
                square += squares[k];
                count += counts[k];
                low = Math.min(low, lows[k]);
                high = Math.max(high, highs[k]);
            }
        }
        return new Level(shiftVolts, count, sum, square, low, high);
    }

    /** The figures of all blocks. */
    Level all() {
        boolean[] used = new boolean[size];
        Arrays.fill(used, true);
        return level(used, Level.NONE);
    }

    /**
     * Sums of samples.
     *
     * @param shiftVolts what was taken off each sample
     * @param count number of samples
     * @param sum their sum
     * @param square sum of their squares
     * @param lowVolts the lowest sample itself
     * @param highVolts the highest sample itself
     */
    record Level(double shiftVolts, long count, double sum, double square, double lowVolts, double highVolts) {
        /** No sample at all. */
        static final Level NONE = new Level(0, 0, 0, 0, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);

        double dcVolts() {
            return shiftVolts + sum / count;
        }

        double alternatingSquare() {
            double mean = sum / count;
            return Math.max(0, square / count - mean * mean);
        }

        double peakVolts() {
            return Math.max(highVolts - dcVolts(), dcVolts() - lowVolts);
        }
    }
}
