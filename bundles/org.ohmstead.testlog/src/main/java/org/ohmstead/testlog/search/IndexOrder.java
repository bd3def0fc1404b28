// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.stream.IntStream;

/** Puts found rows in order. */
final class IndexOrder {
    private static final int ID_BITS = 52;

    private IndexOrder() {}

    /** Returns rows, which rise, in an order; {@code rows} may be null for all. */
    static Found ordered(FoundRows.Owner owner, IndexColumns columns, int[] rows, FindOrder order)
            throws SQLException, BlockCode.DamagedException {
        if (order.column() == IndexColumn.PLACE) {
            return new FoundRows(owner, columns, rows, order.falling());
        }
        int[] from = rows == null ? IntStream.range(0, columns.rows()).toArray() : rows;
        long[] keys = keys(columns, from, order.column());
        return new FoundRows(owner, columns, inOrder(from, keys, order.falling()), false);
    }

    private static int[] inOrder(int[] rows, long[] keys, boolean falling) {
        int[] there = new int[rows.length];
        int[] ordered = new int[rows.length];
        int count = 0;
        int behind = rows.length;
        for (int at = rows.length - 1; at >= 0; at--) {
            if (keys[at] == IndexField.ABSENT) {
                ordered[--behind] = rows[at];
            }
        }
        for (int at = 0; at < rows.length; at++) {
            if (keys[at] != IndexField.ABSENT) {
                there[count++] = at;
            }
        }
        long[] present = new long[count];
        for (int at = 0; at < count; at++) {
            present[at] = keys[there[at]];
        }
        int[] order = RowSort.order(present);
        for (int at = 0; at < count; at++) {
            ordered[falling ? count - 1 - at : at] = rows[there[order[at]]];
        }
        return ordered;
    }

    private static long[] keys(IndexColumns columns, int[] rows, IndexColumn column)
            throws SQLException, BlockCode.DamagedException {
        IndexField field = column.field();
        long[][] values = columns.values(field);
        long[] keys = new long[rows.length];
        for (int at = 0; at < rows.length; at++) {
            keys[at] = values[rows[at] >> IndexColumns.SEGMENT_BITS][rows[at] & IndexColumns.SEGMENT - 1];
        }
        if (field.ofWords()) {
            long[] ranks = columns.ranks(field);
            for (int at = 0; at < rows.length; at++) {
                keys[at] = keys[at] == IndexField.ABSENT ? IndexField.ABSENT : ranks[(int) keys[at]];
            }
        } else if (column == IndexColumn.TAKEN_AT) {
            fill(keys, rows, columns.values(IndexField.RECORDED));
        } else if (column == IndexColumn.ID) {
            long[][] kinds = columns.values(IndexField.KIND);
            for (int at = 0; at < rows.length; at++) {
                long kind = kinds[rows[at] >> IndexColumns.SEGMENT_BITS][rows[at] & IndexColumns.SEGMENT - 1];
                keys[at] = keys[at] == IndexField.ABSENT ? IndexField.ABSENT : kind << ID_BITS | keys[at];
            }
        }
        return keys;
    }

    private static void fill(long[] keys, int[] rows, long[][] instead) {
        for (int at = 0; at < rows.length; at++) {
            if (keys[at] == IndexField.ABSENT) {
                keys[at] = instead[rows[at] >> IndexColumns.SEGMENT_BITS][rows[at] & IndexColumns.SEGMENT - 1];
            }
        }
    }
}
