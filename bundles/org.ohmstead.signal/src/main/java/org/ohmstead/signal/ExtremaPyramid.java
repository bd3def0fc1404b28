// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;
import java.util.Locale;

/**
 * Where a long row of values is lowest and highest between any two places, told in a time that grows only with the
 * logarithm of the distance: the extremes of blocks of 8, 64, 512 ... values are found once. This is what lets a record
 * of millions of samples be drawn at any zoom without losing a single peak. Instances never change.
 */
public final class ExtremaPyramid {
    private static final int BLOCK_BITS = 3;

    private final double[] values;
    /** Of each level the index of the lowest value of each block; level 0 has blocks of 8. */
    private final int[][] lowest;

    private final int[][] highest;

    private ExtremaPyramid(double[] values) {
        this.values = values;
        int levels = 0;
        while (values.length >> (BLOCK_BITS * (levels + 1)) > 0) {
            levels++;
        }
        lowest = new int[levels][];
        highest = new int[levels][];
        for (int level = 0; level < levels; level++) {
            int blocks = values.length >> (BLOCK_BITS * (level + 1));
            lowest[level] = new int[blocks];
            highest[level] = new int[blocks];
            for (int block = 0; block < blocks; block++) {
                join(level, block);
            }
        }
    }

    private void join(int level, int block) {
        int first = block << BLOCK_BITS;
        int low = level == 0 ? first : lowest[level - 1][first];
        int high = level == 0 ? first : highest[level - 1][first];
        for (int i = first + 1; i < first + (1 << BLOCK_BITS); i++) {
            int otherLow = level == 0 ? i : lowest[level - 1][i];
            int otherHigh = level == 0 ? i : highest[level - 1][i];
            low = values[otherLow] < values[low] ? otherLow : low;
            high = values[otherHigh] > values[high] ? otherHigh : high;
        }
        lowest[level][block] = low;
        highest[level][block] = high;
    }

    /** Returns the pyramid of a waveform's samples in volts. */
    public static ExtremaPyramid of(Waveform waveform) {
        return new ExtremaPyramid(waveform.raw());
    }

    /**
     * Returns the pyramid of a copy of the values.
     *
     * @param values each finite, at least one
     * @throws IllegalArgumentException if there is no value or one is not finite
     */
    public static ExtremaPyramid of(double[] values) {
        if (values.length == 0) {
            throw new IllegalArgumentException("values must hold at least one value, but is empty");
        }
        double[] copy = Arrays.copyOf(values, values.length);
        for (int i = 0; i < copy.length; i++) {
            if (!Double.isFinite(copy[i])) {
                throw new IllegalArgumentException("values[" + i + "] must be finite, but is " + copy[i]);
            }
        }
        return new ExtremaPyramid(copy);
    }

    /** Returns the number of values, at least one. */
    public int size() {
        return values.length;
    }

    /**
     * Returns one value.
     *
     * @throws IndexOutOfBoundsException if the index is not within 0 to {@code size() - 1}
     */
    public double valueAt(int index) {
        return values[index];
    }

    /**
     * Returns the index of the lowest value from one index (included) to another (excluded).
     *
     * @throws IllegalArgumentException unless 0 &lt;= from &lt; to &lt;= size()
     */
    public int lowestIn(int from, int to) {
        return extreme(from, to, lowest, -1);
    }

    /**
     * Returns the index of the highest value from one index (included) to another (excluded).
     *
     * @throws IllegalArgumentException unless 0 &lt;= from &lt; to &lt;= size()
     */
    public int highestIn(int from, int to) {
        return extreme(from, to, highest, 1);
    }

    private int extreme(int from, int to, int[][] blocks, int sign) {
        if (from < 0 || to <= from || to > values.length) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "from and to must satisfy 0 <= from < to <= %d, but are %d and %d",
                    values.length,
                    from,
                    to));
        }
        int best = from;
        int index = from;
        while (index < to) {
            int level = 0;
            while (level < blocks.length && fits(index, to, level)) {
                level++;
            }
            int candidate = level == 0 ? index : blocks[level - 1][index >> (BLOCK_BITS * level)];
            best = sign * values[candidate] > sign * values[best] ? candidate : best;
            index += 1 << (BLOCK_BITS * level);
        }
        return best;
    }

    /** Whether a whole block of a level begins at the index and ends in time. */
    private static boolean fits(int index, int to, int level) {
        int size = 1 << (BLOCK_BITS * (level + 1));
        return (index & (size - 1)) == 0 && to - index >= size;
    }
}
