// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.List;

/**
 * The place of a row in the table. It stays the same object while the row in it is exchanged, so that two equal rows can be told apart and
 * the selection follows a row through its changes.
 */
final class Line<R> {
    private R row;
    private List<CellMark> marks = List.of();

    Line(R row) {
        this.row = row;
    }

    R row() {
        return row;
    }

    void put(R newRow) {
        row = newRow;
    }

    List<CellMark> marks() {
        return marks;
    }

    void setMarks(List<CellMark> newMarks) {
        marks = List.copyOf(newMarks);
    }
}
