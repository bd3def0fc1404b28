// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.Arrays;

/** Puts whole numbers in order without comparing them: by eleven of their bits at a time, from the lowest. */
final class RowSort {
    private static final int DIGIT_BITS = 11;
    private static final int DIGITS = 1 << DIGIT_BITS;
    private static final int FEW = 4096;

    private long[] keys;
    private int[] places;
    private long[] nextKeys;
    private int[] nextPlaces;

    private RowSort(long[] keys) {
        this.keys = keys;
        this.places = new int[keys.length];
        this.nextKeys = new long[keys.length];
        this.nextPlaces = new int[keys.length];
    }

    /** Returns the places of the keys in rising order; equal ones keep theirs. */
    static int[] order(long[] keys) {
        return keys.length < FEW ? orderOfFew(keys) : new RowSort(keys.clone()).orderOfMany();
    }

    private static int[] orderOfFew(long[] keys) {
        Integer[] order = new Integer[keys.length];
        Arrays.setAll(order, at -> at);
        Arrays.sort(order, (one, other) -> Long.compare(keys[one], keys[other]));
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }

    private int[] orderOfMany() {
        long least = Long.MAX_VALUE;
        for (long key : keys) {
            least = Math.min(least, key);
        }
        long all = 0;
        for (int at = 0; at < keys.length; at++) {
            // As unsigned numbers the distances from the least have the order of the keys, whatever their span.
            keys[at] -= least;
            places[at] = at;
            all |= keys[at];
        }
        for (int shift = 0; shift < Long.SIZE && all >>> shift != 0; shift += DIGIT_BITS) {
            if ((all >>> shift & DIGITS - 1) != 0) {
                pass(shift);
            }
        }
        return places;
    }

    /** The keys move along with their places, so that they are read one after the other. */
    private void pass(int shift) {
        int[] starts = new int[DIGITS + 1];
        for (long key : keys) {
            starts[(int) (key >>> shift & DIGITS - 1) + 1]++;
        }
        for (int digit = 0; digit < DIGITS; digit++) {
            starts[digit + 1] += starts[digit];
        }
        for (int at = 0; at < keys.length; at++) {
            int to = starts[(int) (keys[at] >>> shift & DIGITS - 1)]++;
            nextKeys[to] = keys[at];
            nextPlaces[to] = places[at];
        }
        long[] oldKeys = keys;
        int[] oldPlaces = places;
        keys = nextKeys;
        places = nextPlaces;
        nextKeys = oldKeys;
        nextPlaces = oldPlaces;
    }
}
