// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.Arrays;

/** Puts found rows in order. */
final class IndexOrder {
    private static final int MOST_ID_BITS = 52;

    private IndexOrder() {}

    /** Returns rows, which rise, in an order; {@code rows} may be null for all. */
    static Found ordered(FoundRows.Owner owner, IndexColumns columns, int[] rows, FindOrder order)
            throws SQLException, BlockCode.DamagedException {
        if (order.column() == IndexColumn.PLACE) {
            return new FoundRows(owner, columns, rows, order.falling());
        }
        int[] from = rows == null ? RowSort.asTheyAre(columns.rows()) : rows;
        long[] keys = keys(columns, from, order.column());
        return new FoundRows(owner, columns, inOrder(from, keys, order.falling()), false);
    }

    private static int[] inOrder(int[] rows, long[] keys, boolean falling) {
        int[] there = present(keys);
        int[] ordered = new int[rows.length];
        int behind = there.length;
        if (there.length < rows.length) {
            for (int at = 0; at < rows.length; at++) {
                if (keys[at] == IndexField.ABSENT) {
                    ordered[behind++] = rows[at];
                }
            }
        }
        int[] order = RowSort.order(there.length < rows.length ? chosen(keys, there) : keys);
        for (int at = 0; at < order.length; at++) {
            ordered[falling ? order.length - 1 - at : at] = rows[there[order[at]]];
        }
        return ordered;
    }

    /** Returns the places of the keys that are there. */
    private static int[] present(long[] keys) {
        int[] there = new int[keys.length];
        int count = 0;
        for (int at = 0; at < keys.length; at++) {
            if (keys[at] != IndexField.ABSENT) {
                there[count++] = at;
            }
        }
        return count == keys.length ? there : Arrays.copyOf(there, count);
    }

    private static long[] chosen(long[] keys, int[] places) {
        long[] chosen = new long[places.length];
        for (int at = 0; at < places.length; at++) {
            chosen[at] = keys[places[at]];
        }
        return chosen;
    }

    private static long[] keys(IndexColumns columns, int[] rows, IndexColumn column)
            throws SQLException, BlockCode.DamagedException {
        IndexField field = column.field();
        long[] keys = values(columns.values(field), rows);
        if (field.ofWords()) {
            long[] ranks = columns.ranks(field);
            for (int at = 0; at < rows.length; at++) {
                keys[at] = keys[at] == IndexField.ABSENT ? IndexField.ABSENT : ranks[(int) keys[at]];
            }
        } else if (column == IndexColumn.TAKEN_AT) {
            fill(keys, rows, columns.values(IndexField.RECORDED));
        } else if (column == IndexColumn.ID) {
            putKindsBefore(keys, values(columns.values(IndexField.KIND), rows));
        }
        return keys;
    }

    private static long[] values(long[][] column, int[] rows) {
        long[] values = new long[rows.length];
        for (int at = 0; at < rows.length; at++) {
            values[at] = column[rows[at] >> IndexColumns.SEGMENT_BITS][rows[at] & IndexColumns.SEGMENT - 1];
        }
        return values;
    }

    /** Directly before the numbers, however long they are, so that there are few bits to sort by. */
    private static void putKindsBefore(long[] numbers, long[] kinds) {
        long bits = 0;
        for (long number : numbers) {
            bits |= number == IndexField.ABSENT ? 0 : number;
        }
        int shift = Math.min(MOST_ID_BITS, Long.SIZE - Long.numberOfLeadingZeros(bits));
        for (int at = 0; at < numbers.length; at++) {
            numbers[at] = numbers[at] == IndexField.ABSENT ? IndexField.ABSENT : kinds[at] << shift | numbers[at];
        }
    }

    private static void fill(long[] keys, int[] rows, long[][] instead) {
        for (int at = 0; at < rows.length; at++) {
            if (keys[at] == IndexField.ABSENT) {
                keys[at] = instead[rows[at] >> IndexColumns.SEGMENT_BITS][rows[at] & IndexColumns.SEGMENT - 1];
            }
        }
    }
}
