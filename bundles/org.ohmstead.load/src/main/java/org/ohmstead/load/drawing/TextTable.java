// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.List;

/** A table for a fixed-width font. */
final class TextTable {
    private static final String GAP = "  ";

    private TextTable() {}

    /** Returns rows of equally many cells as lines, columns aligned on the left. */
    static String of(List<List<String>> rows) {
        int columns = rows.get(0).size();
        int[] widths = new int[columns];
        for (List<String> row : rows) {
            for (int i = 0; i < columns; i++) {
                widths[i] = Math.max(widths[i], letters(row.get(i)));
            }
        }
        StringBuilder out = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < columns; i++) {
                String cell = row.get(i);
                line.append(cell).append(" ".repeat(widths[i] - letters(cell))).append(GAP);
            }
            out.append(line.toString().stripTrailing()).append('\n');
        }
        return out.toString();
    }

    private static int letters(String text) {
        return text.codePointCount(0, text.length());
    }
}
