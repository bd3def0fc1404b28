// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.workbench.table.CopiedTable;

/**
 * A small table as text: what is shown, and what is copied.
 *
 * @param headers one for each column
 * @param rows from top to bottom
 */
record Sheet(List<Header> headers, List<Row> rows) {
    /** No columns, no rows. */
    static final Sheet EMPTY = new Sheet(List.of(), List.of());

    Sheet {
        headers = List.copyOf(headers);
        rows = List.copyOf(rows);
    }

    /**
     * The head of a column.
     *
     * @param text with the unit
     * @param numeric whether figures stand below it, on the right
     * @param hint what the column says
     */
    record Header(String text, boolean numeric, String hint) {}

    /**
     * What stands in one place.
     *
     * @param text shown and copied
     * @param hover what more there is to say; may be empty
     */
    record Cell(String text, String hover) {
        static Cell of(String text) {
            return new Cell(text, "");
        }
    }

    /** A line of the table, as many cells as there are headers. */
    record Row(List<Cell> cells) {
        Row {
            cells = List.copyOf(cells);
        }

        String text(int column) {
            return cells.get(column).text();
        }
    }

    /** Returns the table for a spreadsheet: a header first, tabs between the columns. */
    String tabText() {
        List<List<String>> lines = new ArrayList<>();
        lines.add(headers.stream().map(Header::text).toList());
        rows.forEach(row -> lines.add(row.cells().stream().map(Cell::text).toList()));
        return CopiedTable.text(lines);
    }
}
