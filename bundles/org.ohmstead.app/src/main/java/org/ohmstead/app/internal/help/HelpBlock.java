// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.List;
import java.util.stream.Collectors;

/** What a page is made of, one below the other. */
sealed interface HelpBlock {
    /** Returns the words without their look. */
    String plainText();

    /**
     * A heading, a paragraph or an item of a list.
     *
     * @param kind which of them
     * @param depth how deep it lies within lists, 0 outside of them
     * @param marker what stands before an item, such as "2."; empty otherwise
     * @param spans the text
     */
    record Text(Kind kind, int depth, String marker, List<HelpSpan> spans) implements HelpBlock {
        public Text {
            spans = List.copyOf(spans);
        }

        static Text of(Kind kind, HelpSpan... spans) {
            return new Text(kind, 0, "", List.of(spans));
        }

        @Override
        public String plainText() {
            return words(spans);
        }
    }

    /**
     * A table.
     *
     * @param rows its rows, the first one usually a header
     */
    record Table(List<Row> rows) implements HelpBlock {
        public Table {
            rows = List.copyOf(rows);
        }

        @Override
        public String plainText() {
            return rows.stream()
                    .flatMap(row -> row.cells().stream())
                    .map(HelpBlock::words)
                    .collect(Collectors.joining(" "));
        }
    }

    /**
     * A row of a table.
     *
     * @param header whether it names the columns
     * @param cells the text of each cell
     */
    record Row(boolean header, List<List<HelpSpan>> cells) {
        public Row {
            cells = cells.stream().map(List::copyOf).toList();
        }
    }

    /** What a text block is. */
    enum Kind {
        TITLE,
        HEADING,
        SUBHEADING,
        PARAGRAPH,
        CAUTION,
        ITEM
    }

    /** Returns the words of some spans. */
    static String words(List<HelpSpan> spans) {
        return spans.stream().map(HelpSpan::text).collect(Collectors.joining());
    }
}
