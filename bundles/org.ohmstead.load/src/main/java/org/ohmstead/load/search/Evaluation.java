// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

/** Works out what a value table's entries are, from the resistors up. */
final class Evaluation {
    private static final int SAFE_BITS = 62;

    private final Kinds kinds;
    private final ValueTable table;
    private final Features[] spare;
    private int depth;
    private long top;
    private long bottom;

    Evaluation(Kinds kinds, ValueTable table, int mostParts) {
        this.kinds = kinds;
        this.table = table;
        spare = new Features[mostParts + 1];
        for (int index = 0; index < spare.length; index++) {
            spare[index] = new Features();
        }
    }

    Kinds kinds() {
        return kinds;
    }

    ValueTable table() {
        return table;
    }

    void load(int entry, Features features) {
        if (table.isSingle(entry)) {
            features.set(kinds.features(table.kind(entry)));
            return;
        }
        load(table.first(entry), features);
        join(table.second(entry), features, table.isSeries(entry));
    }

    void join(int entry, Features features, boolean series) {
        if (table.isSingle(entry)) {
            features.join(kinds.features(table.kind(entry)), series);
            return;
        }
        Features other = spare[depth];
        depth++;
        load(entry, other);
        depth--;
        features.join(other, series);
    }

    /** Returns whether two entries are exactly equal in resistance. */
    boolean same(int one, int other) {
        if (small(one)) {
            long oneTop = top;
            long oneBottom = bottom;
            if (small(other)) {
                return oneTop * bottom == top * oneBottom
                        && Math.multiplyHigh(oneTop, bottom) == Math.multiplyHigh(top, oneBottom);
            }
        }
        return exact(one).compareTo(exact(other)) == 0;
    }

    /** Returns the exact resistance of an entry in the units of the kinds. */
    Fraction exact(int entry) {
        if (small(entry)) {
            return Fraction.of(top, bottom);
        }
        if (table.isSingle(entry)) {
            return kinds.exact(table.kind(entry));
        }
        Fraction first = exact(table.first(entry));
        Fraction second = exact(table.second(entry));
        return table.isSeries(entry) ? first.plus(second) : first.parallelWith(second);
    }

    /** Works out the exact resistance in longs; returns false when it does not fit. */
    private boolean small(int entry) {
        if (table.isSingle(entry)) {
            top = kinds.exactUnits(table.kind(entry));
            bottom = 1;
            return top != 0;
        }
        if (!small(table.first(entry))) {
            return false;
        }
        long firstTop = top;
        long firstBottom = bottom;
        if (!small(table.second(entry)) || bits(firstTop | firstBottom) + bits(top | bottom) > SAFE_BITS) {
            return false;
        }
        long cross = firstTop * bottom + top * firstBottom;
        if (table.isSeries(entry)) {
            top = cross;
            bottom = firstBottom * bottom;
        } else {
            top = firstTop * top;
            bottom = cross;
        }
        return true;
    }

    private static int bits(long value) {
        return Long.SIZE - Long.numberOfLeadingZeros(value);
    }
}
