// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Puts whole numbers in order without comparing them: by sixteen of their bits at a time, from the lowest. */
final class RowSort {
    private static final int DIGIT_BITS = 16;
    private static final int DIGITS = 1 << DIGIT_BITS;
    private static final int FEW = 4096;

    private RowSort() {}

    /** Returns the places of the keys in rising order; equal ones keep theirs. */
    static int[] order(long[] keys) {
        return keys.length < FEW ? orderOfFew(keys) : orderOfMany(keys);
    }

    private static int[] orderOfFew(long[] keys) {
        Integer[] order = new Integer[keys.length];
        Arrays.setAll(order, at -> at);
        Arrays.sort(order, (one, other) -> Long.compare(keys[one], keys[other]));
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }

    private static int[] orderOfMany(long[] keys) {
        long least = Arrays.stream(keys).min().orElse(0);
        int[] order = IntStream.range(0, keys.length).toArray();
        int[] target = new int[keys.length];
        long[] offsets = new long[keys.length];
        long all = 0;
        for (int at = 0; at < keys.length; at++) {
            // As unsigned numbers the distances from the least have the order of the keys, whatever their span.
            offsets[at] = keys[at] - least;
            all |= offsets[at];
        }
        for (int shift = 0; shift < Long.SIZE && all >>> shift != 0; shift += DIGIT_BITS) {
            if ((all >>> shift & DIGITS - 1) != 0) {
                pass(offsets, order, target, shift);
                int[] swap = order;
                order = target;
                target = swap;
            }
        }
        return order;
    }

    private static void pass(long[] offsets, int[] from, int[] to, int shift) {
        int[] starts = new int[DIGITS + 1];
        for (long offset : offsets) {
            starts[(int) (offset >>> shift & DIGITS - 1) + 1]++;
        }
        for (int digit = 0; digit < DIGITS; digit++) {
            starts[digit + 1] += starts[digit];
        }
        for (int place : from) {
            int digit = (int) (offsets[place] >>> shift & DIGITS - 1);
            to[starts[digit]++] = place;
        }
    }
}
