// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.Arrays;

/** Puts whole numbers in order without comparing them: by some of their bits at a time, from the lowest. */
final class RowSort {
    /** Places of as many digits are written to at once as the processor's nearest memory has room for. */
    private static final int MOST_DIGIT_BITS = 12;

    private static final int FEW = 4096;

    private final int lowBits;
    private final int digitBits;
    private final long least;
    private final int[][] starts;

    /** Of the pass before; those of the first are the keys themselves, at the places 0, 1 and so on. */
    private long[] keys;

    private int[] places;
    private long[] spareKeys;
    private int[] sparePlaces;

    private RowSort(long[] keys, Span span) {
        this.keys = keys;
        this.least = span.least;
        this.lowBits = Long.numberOfTrailingZeros(span.varying);
        int bits = Long.SIZE - Long.numberOfLeadingZeros(span.most - span.least) - lowBits;
        int passes = (bits + MOST_DIGIT_BITS - 1) / MOST_DIGIT_BITS;
        this.digitBits = (bits + passes - 1) / passes;
        this.starts = new int[passes][1 << digitBits];
    }

    /** How far keys lie apart, and in which bits they differ. */
    private static final class Span {
        private long least = Long.MAX_VALUE;
        private long most = Long.MIN_VALUE;
        private long varying;
        private boolean rising = true;

        private void take(long[] keys) {
            long before = Long.MIN_VALUE;
            for (long key : keys) {
                least = Math.min(least, key);
                most = Math.max(most, key);
                varying |= key ^ keys[0];
                rising &= before <= key;
                before = key;
            }
        }
    }

    /** Returns the places of the keys in rising order; equal ones keep theirs. The keys are not changed. */
    static int[] order(long[] keys) {
        if (keys.length < FEW) {
            return orderOfFew(keys);
        }
        Span span = new Span();
        span.take(keys);
        return span.rising ? asTheyAre(keys.length) : new RowSort(keys, span).orderOfMany();
    }

    /** Returns the numbers from 0 up. */
    static int[] asTheyAre(int count) {
        int[] places = new int[count];
        for (int at = 0; at < count; at++) {
            places[at] = at;
        }
        return places;
    }

    private static int[] orderOfFew(long[] keys) {
        Integer[] order = new Integer[keys.length];
        Arrays.setAll(order, at -> at);
        Arrays.sort(order, (one, other) -> Long.compare(keys[one], keys[other]));
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }

    private int[] orderOfMany() {
        for (int pass = 0; pass < starts.length; pass++) {
            countDigits(starts[pass], lowBits + pass * digitBits);
        }
        for (int pass = 0; pass < starts.length; pass++) {
            if (sumUp(starts[pass])) {
                move(starts[pass], lowBits + pass * digitBits);
            }
        }
        return places;
    }

    private void countDigits(int[] counts, int shift) {
        long mask = counts.length - 1;
        for (long key : keys) {
            // As unsigned numbers the distances from the least have the order of the keys, whatever their span.
            counts[(int) (key - least >>> shift & mask)]++;
        }
    }

    /** Makes of the number of each digit the place of the first; returns false when all keys have the same digit. */
    private boolean sumUp(int[] counts) {
        int sum = 0;
        for (int digit = 0; digit < counts.length; digit++) {
            int count = counts[digit];
            if (count == keys.length) {
                return false;
            }
            counts[digit] = sum;
            sum += count;
        }
        return true;
    }

    /** The keys move along with their places, so that they are read one after the other. */
    private void move(int[] next, int shift) {
        long[] toKeys = spareKeys == null ? new long[keys.length] : spareKeys;
        int[] toPlaces = sparePlaces == null ? new int[keys.length] : sparePlaces;
        if (places == null) {
            moveFirst(next, shift, toKeys, toPlaces);
        } else {
            moveOn(next, shift, toKeys, toPlaces);
            spareKeys = keys;
            sparePlaces = places;
        }
        keys = toKeys;
        places = toPlaces;
    }

    private void moveFirst(int[] next, int shift, long[] toKeys, int[] toPlaces) {
        long mask = next.length - 1;
        for (int at = 0; at < keys.length; at++) {
            int to = next[(int) (keys[at] - least >>> shift & mask)]++;
            toKeys[to] = keys[at];
            toPlaces[to] = at;
        }
    }

    private void moveOn(int[] next, int shift, long[] toKeys, int[] toPlaces) {
        long mask = next.length - 1;
        for (int at = 0; at < keys.length; at++) {
            int to = next[(int) (keys[at] - least >>> shift & mask)]++;
            toKeys[to] = keys[at];
            toPlaces[to] = places[at];
        }
    }
}
