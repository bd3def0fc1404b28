// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.Arrays;

/**
 * Networks by resistance, as columns of numbers. An entry is one resistor or two earlier entries joined, so that all else can be had back
 * from it; it is kept this small because millions are made and few are looked at.
 */
final class ValueTable {
    private static final int FIRST_CAPACITY = 1024;

    private double[] ohms = new double[FIRST_CAPACITY];
    private int[] first = new int[FIRST_CAPACITY];
    private int[] second = new int[FIRST_CAPACITY];
    private int size;

    int size() {
        return size;
    }

    void clear() {
        size = 0;
    }

    void removeLast() {
        size--;
    }

    /** Makes room for so many entries in all. */
    void reserve(int capacity) {
        if (capacity > ohms.length) {
            ohms = Arrays.copyOf(ohms, capacity);
            first = Arrays.copyOf(first, capacity);
            second = Arrays.copyOf(second, capacity);
        }
    }

    void addSingle(int kind, double singleOhms) {
        add(singleOhms, ~kind, 0);
    }

    /** Adds two entries joined; it may be another table's entries that they are. */
    void addJoined(int one, int other, boolean series, double joinedOhms) {
        add(joinedOhms, one, series ? other : ~other);
    }

    /** Adds a copy of an entry that joins entries of this table. */
    void addCopy(ValueTable source, int from) {
        add(source.ohms[from], source.first[from], source.second[from]);
    }

    double ohms(int entry) {
        return ohms[entry];
    }

    boolean isSingle(int entry) {
        return first[entry] < 0;
    }

    int kind(int entry) {
        return ~first[entry];
    }

    int first(int entry) {
        return first[entry];
    }

    int second(int entry) {
        return second[entry] >= 0 ? second[entry] : ~second[entry];
    }

    boolean isSeries(int entry) {
        return second[entry] >= 0;
    }

    /** Returns the first entry of an ascending range that is not below a resistance, or the end of the range. */
    int lowerBound(int from, int to, double leastOhms) {
        int low = from;
        int high = to;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (ohms[middle] < leastOhms) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private void add(double newOhms, int newFirst, int newSecond) {
        if (size == ohms.length) {
            reserve(size + size / 2);
        }
        ohms[size] = newOhms;
        first[size] = newFirst;
        second[size] = newSecond;
        size++;
    }
}
