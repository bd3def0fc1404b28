// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * A table as the template prints it.
 *
 * @param caption what it shows; may be empty
 * @param columns the headings
 * @param rows the rows, each with a cell for every column
 */
public record Table(String caption, List<Column> columns, List<Row> rows) {
    /**
     * A heading.
     *
     * @param title what the column holds
     * @param unit symbol of its unit; may be empty
     * @param style how its cells are set: "number" right-aligned, "text", or "short", which is never broken
     */
    public record Column(String title, String unit, String style) {}

    /**
     * A row.
     *
     * @param cells its texts
     * @param weight "" for an ordinary row, "sum" for one that is set off, "part" for one whose first cell heads those below it
     */
    public record Row(List<String> cells, String weight) {}

    /** Checks that the rows fit the columns and copies the lists. */
    public Table {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        for (Row row : rows) {
            if (row.cells().size() != columns.size()) {
                throw new IllegalArgumentException(
                        "row has " + row.cells().size() + " cells; it must have " + columns.size());
            }
        }
    }

    /** Returns how many rows there are beside the headings of parts. */
    long entryCount() {
        return rows.stream().filter(row -> !row.weight().equals("part")).count();
    }

    /** Returns the table with at most so many rows, the headings of parts not counted; a part without rows loses its heading. */
    Table limited(int most) {
        List<Row> kept = new ArrayList<>();
        int entries = 0;
        for (Row row : rows) {
            boolean part = row.weight().equals("part");
            if (entries == most) {
                break;
            }
            kept.add(row);
            entries += part ? 0 : 1;
        }
        while (!kept.isEmpty() && kept.get(kept.size() - 1).weight().equals("part")) {
            kept.remove(kept.size() - 1);
        }
        return new Table(caption, columns, kept);
    }

    /** Returns the table with no text longer than so many characters. */
    Table shortened(int characters) {
        return new Table(
                caption,
                columns,
                rows.stream()
                        .map(row -> new Row(
                                row.cells().stream()
                                        .map(cell -> PlainText.shortened(cell, characters))
                                        .toList(),
                                row.weight()))
                        .toList());
    }

    static Builder titled(String caption) {
        return new Builder(caption);
    }

    /** Puts a table together. */
    static final class Builder {
        private final String caption;
        private final List<Column> columns = new ArrayList<>();
        private final List<Row> rows = new ArrayList<>();

        private Builder(String caption) {
            this.caption = caption;
        }

        Builder text(String title) {
            columns.add(new Column(title, "", "text"));
            return this;
        }

        Builder brief(String title) {
            columns.add(new Column(title, "", "short"));
            return this;
        }

        Builder number(String title, String unit) {
            columns.add(new Column(title, unit, "number"));
            return this;
        }

        Builder row(String... cells) {
            return row(List.of(cells));
        }

        Builder row(List<String> cells) {
            rows.add(new Row(List.copyOf(cells), ""));
            return this;
        }

        Builder sum(String... cells) {
            rows.add(new Row(List.of(cells), "sum"));
            return this;
        }

        Builder part(String heading) {
            List<String> cells = new ArrayList<>(Collections.nCopies(columns.size(), ""));
            cells.set(0, heading);
            rows.add(new Row(List.copyOf(cells), "part"));
            return this;
        }

        Table build() {
            return new Table(caption, columns, rows);
        }
    }
}
