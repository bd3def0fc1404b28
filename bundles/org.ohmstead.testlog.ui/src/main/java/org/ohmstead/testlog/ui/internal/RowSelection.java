// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.BitSet;

/** Which rows of a table are selected, also those that are not in sight. */
final class RowSelection {
    private BitSet rows = new BitSet();
    private int anchor = -1;
    private int focus = -1;

    /** Selects nothing. */
    void clear() {
        rows.clear();
        anchor = -1;
        focus = -1;
    }

    /** Selects one row only. */
    void only(int index) {
        rows.clear();
        rows.set(index);
        anchor = index;
        focus = index;
    }

    /** Selects the rows between the one that was selected first and another. */
    void extendTo(int index) {
        int from = anchor < 0 ? index : anchor;
        rows.clear();
        rows.set(Math.min(from, index), Math.max(from, index) + 1);
        anchor = from;
        focus = index;
    }

    void all(int size) {
        rows.set(0, size);
        anchor = 0;
        focus = size - 1;
    }

    /**
     * Takes over what the user selected among the rows in sight.
     *
     * @param top the row at the top
     * @param count how many are in sight
     * @param indexes which of those are selected, counted from the one at the top
     * @param newFocus the one that was selected last of all, or -1
     * @param keepOthers whether rows out of sight stay as they are
     */
    void take(int top, int count, int[] indexes, int newFocus, boolean keepOthers) {
        if (keepOthers) {
            rows.clear(top, top + count);
        } else {
            rows.clear();
        }
        for (int index : indexes) {
            rows.set(top + index);
        }
        focus = newFocus >= 0 && rows.get(top + newFocus) ? top + newFocus : rows.nextSetBit(0);
        if (anchor < 0 || !rows.get(anchor) || rows.cardinality() == 1) {
            anchor = focus;
        }
    }

    /** Forgets rows from a place on, since there are no longer so many. */
    void cut(int size) {
        rows.clear(size, Math.max(size, rows.length()));
        if (focus >= size || anchor >= size) {
            focus = rows.nextSetBit(0);
            anchor = focus;
        }
    }

    boolean has(int index) {
        return rows.get(index);
    }

    int count() {
        return rows.cardinality();
    }

    /** Returns the row that was selected last of all, or -1. */
    int focus() {
        return focus;
    }

    /** Returns the selected rows, at most so many, from top to bottom. */
    int[] rows(int most) {
        return rows.stream().limit(most).toArray();
    }

    /** Returns those in sight, counted from the one at the top. */
    int[] inSight(int top, int count) {
        return rows.get(top, top + count).stream().toArray();
    }
}
