// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.util.List;

/**
 * A row of a table from elsewhere.
 *
 * @param line where it stands, from 1
 * @param cells its cells
 */
record RawRow(long line, List<RawCell> cells) {
    /**
     * A cell.
     *
     * @param text what it holds
     * @param number whether the file says that it is a number, written with a decimal point
     */
    record RawCell(String text, boolean number) {
        static final RawCell BLANK = new RawCell("", false);
    }

    RawCell cell(int column) {
        return column < cells.size() ? cells.get(column) : RawCell.BLANK;
    }

    boolean blank() {
        return cells.stream().allMatch(cell -> cell.text().isBlank());
    }
}
