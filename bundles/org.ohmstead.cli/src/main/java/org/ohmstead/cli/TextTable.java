// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.ArrayList;
import java.util.List;

/** A table for the terminal: columns as wide as they need to be, numbers at the right. */
final class TextTable {
    private final List<String> headers;
    private final boolean[] right;
    private final List<List<String>> rows = new ArrayList<>();

    /** Makes a table; a header that begins with ">" belongs to a column of numbers. */
    TextTable(String... columns) {
        headers = new ArrayList<>();
        right = new boolean[columns.length];
        for (int i = 0; i < columns.length; i++) {
            right[i] = columns[i].startsWith(">");
            headers.add(right[i] ? columns[i].substring(1) : columns[i]);
        }
    }

    /** Makes a table whose head is a text of the command line, with "|" between the columns. */
    static TextTable named(String key, Object... arguments) {
        return new TextTable(Texts.of(key, arguments).split("\\|", -1));
    }

    void row(String... cells) {
        if (cells.length != right.length) {
            throw new IllegalArgumentException("the row has " + cells.length + " cells; it must have " + right.length);
        }
        rows.add(List.of(cells));
    }

    void print(Console console) {
        int[] widths = new int[right.length];
        measure(headers, widths);
        rows.forEach(row -> measure(row, widths));
        console.line(format(headers, widths));
        StringBuilder rule = new StringBuilder();
        for (int width : widths) {
            rule.append("-".repeat(width)).append("  ");
        }
        console.line(rule.toString().stripTrailing());
        rows.forEach(row -> console.line(format(row, widths)));
    }

    private static void measure(List<String> cells, int[] widths) {
        for (int i = 0; i < widths.length; i++) {
            widths[i] = Math.max(
                    widths[i], cells.get(i).codePointCount(0, cells.get(i).length()));
        }
    }

    private String format(List<String> cells, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            String cell = cells.get(i);
            String gap = " ".repeat(widths[i] - cell.codePointCount(0, cell.length()));
            line.append(right[i] ? gap + cell : cell + gap).append("  ");
        }
        return line.toString().stripTrailing();
    }
}
