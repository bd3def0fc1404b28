// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

/** What the index keeps of each entry, as a column of whole numbers. */
enum IndexField {
    CHAIN(true),
    SEQUENCE(false),
    NUMBER(false),
    KIND(false),
    RECORDED(false),
    TAKEN(false),
    AMPLIFIER(true),
    SERIAL(true),
    BENCH(true),
    OPERATOR(true),
    MODE(false),
    LOAD(true),
    LOAD_OHMS(false),
    SUPPLY(false),
    STEP(true),
    STIMULUS(true),
    MEASUREMENT(true),
    POWER(false),
    UNCERTAINTY(false),
    THD(false),
    OUTCOME(false),
    STATE(false),
    OVERDUE(false),
    TEXT(true),
    /** No column: the ids of measured figures, as words. */
    FIGURE_IDS(true);

    /** What stands for a value that an entry does not have. */
    static final long ABSENT = Long.MIN_VALUE;

    private static final IndexField[] COLUMNS = columns();

    private final boolean words;

    IndexField(boolean words) {
        this.words = words;
    }

    /** Whether the values are numbers of words. */
    boolean ofWords() {
        return words;
    }

    static IndexField[] stored() {
        return COLUMNS.clone();
    }

    private static IndexField[] columns() {
        IndexField[] all = values();
        IndexField[] columns = new IndexField[all.length - 1];
        System.arraycopy(all, 0, columns, 0, columns.length);
        return columns;
    }

    /** Returns a whole number that stands for a figure, in the same order. */
    static long ofDouble(double value) {
        long bits = Double.doubleToRawLongBits(value + 0.0);
        return bits ^ (bits >> 63 & Long.MAX_VALUE);
    }

    static double toDouble(long stored) {
        return Double.longBitsToDouble(stored ^ (stored >> 63 & Long.MAX_VALUE));
    }
}
