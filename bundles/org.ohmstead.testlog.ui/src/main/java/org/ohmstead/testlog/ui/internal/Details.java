// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;

/**
 * Everything about one entry, as blocks of text under one another.
 *
 * @param blocks from top to bottom
 */
record Details(List<Block> blocks) {
    Details {
        blocks = List.copyOf(blocks);
    }

    /**
     * A piece of text.
     *
     * @param text what is shown
     * @param hover what more there is to say; empty for nothing
     * @param copy what is copied instead of a shortened text; empty when the text is whole
     */
    record Cell(String text, String hover, String copy) {
        static Cell of(String text) {
            return new Cell(text, "", "");
        }

        static Cell of(String text, String hover) {
            return new Cell(text, hover, "");
        }

        static Cell hash(String hash) {
            return new Cell(Figures.shortHash(hash), hash, hash);
        }
    }

    /** A part of the details. */
    sealed interface Block {}

    /** The entry's own heading. */
    record Title(String text) implements Block {}

    /** The heading of what follows. */
    record Heading(String text) implements Block {}

    /** Running text; a warning stands out. */
    record Paragraph(Cell cell, boolean warning) implements Block {}

    /**
     * Rows of cells in columns.
     *
     * @param rows equally many cells in each; the first cell is the row's label
     * @param rightAligned whether the columns after the first hold figures
     */
    record Grid(List<List<Cell>> rows, boolean rightAligned) implements Block {
        Grid {
            rows = rows.stream().map(List::copyOf).toList();
        }
    }

    /** Returns these details with a warning below the title. */
    Details under(String warning) {
        List<Block> longer = new ArrayList<>(blocks);
        longer.add(Math.min(1, longer.size()), new Paragraph(Cell.of(warning), true));
        return new Details(longer);
    }

    /** Returns all the text with tabs between columns, as it is copied. */
    String plainText() {
        List<String> lines = new ArrayList<>();
        for (Block block : blocks) {
            if (block instanceof Title title) {
                lines.add(title.text());
            } else if (block instanceof Heading heading) {
                lines.add("");
                lines.add(heading.text());
            } else if (block instanceof Paragraph paragraph) {
                lines.add(whole(paragraph.cell()));
            } else if (block instanceof Grid grid) {
                grid.rows()
                        .forEach(row -> lines.add(String.join(
                                "\t", row.stream().map(Details::whole).toList())));
            }
        }
        return String.join("\n", lines) + "\n";
    }

    private static String whole(Cell cell) {
        return cell.copy().isEmpty() ? cell.text() : cell.copy();
    }

    /** Collects blocks one after the other. */
    static final class Builder {
        private final List<Block> blocks = new ArrayList<>();
        private final List<List<Cell>> facts = new ArrayList<>();

        Builder title(String text) {
            return add(new Title(text));
        }

        Builder heading(String text) {
            return add(new Heading(text));
        }

        Builder paragraph(String text, boolean warning) {
            return add(new Paragraph(Cell.of(text), warning));
        }

        Builder grid(List<List<Cell>> rows) {
            return rows.isEmpty() ? this : add(new Grid(rows, true));
        }

        /** Adds a label with its value; labels that follow one another share a column. */
        Builder fact(String label, Cell value) {
            return row(List.of(Cell.of(label), value));
        }

        /** Adds a row of left-aligned cells below the facts so far, which must have as many. */
        Builder row(List<Cell> cells) {
            facts.add(cells);
            return this;
        }

        Builder fact(String label, String value) {
            return fact(label, Cell.of(value));
        }

        private Builder add(Block block) {
            flush();
            blocks.add(block);
            return this;
        }

        private void flush() {
            if (!facts.isEmpty()) {
                blocks.add(new Grid(facts, false));
                facts.clear();
            }
        }

        Details build() {
            flush();
            return new Details(blocks);
        }
    }
}
