// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * The text that spreadsheets exchange by the clipboard: cells parted by tabs, rows by line ends. A cell with a tab, a line end or a
 * quotation mark in it stands in quotation marks, those within doubled, as in RFC 4180.
 */
final class TabbedText {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:[eE][+-]?\\d+)?");

    private TabbedText() {}

    static String write(List<List<String>> rows) {
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            List<String> cells = row.stream().map(TabbedText::cell).toList();
            text.append(String.join("\t", cells)).append('\n');
        }
        return text.toString();
    }

    private static String cell(String plain) {
        String safe = startsFormula(plain) ? "'" + plain : plain;
        boolean quoted = safe.chars().anyMatch(each -> "\t\n\r\"".indexOf(each) >= 0);
        return quoted ? "\"" + safe.replace("\"", "\"\"") + "\"" : safe;
    }

    /** A spreadsheet would run such a text as a formula; a number with a sign is none. */
    private static boolean startsFormula(String plain) {
        return !plain.isEmpty()
                && "=+-@\t\r".indexOf(plain.charAt(0)) >= 0
                && !NUMBER.matcher(plain).matches();
    }

    /** Returns the cells of each row; a line end at the very end begins no row. */
    static List<List<String>> read(String text) {
        List<List<String>> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        int at = 0;
        while (at < text.length()) {
            StringBuilder cell = new StringBuilder();
            at = text.charAt(at) == '"' ? readQuoted(text, at, cell) : at;
            while (at < text.length() && "\t\r\n".indexOf(text.charAt(at)) < 0) {
                cell.append(text.charAt(at++));
            }
            row.add(withoutGuard(cell.toString()));
            if (at < text.length() && text.charAt(at) == '\t') {
                at++;
                if (at < text.length()) {
                    continue;
                }
                row.add("");
            }
            at = at < text.length() && text.startsWith("\r\n", at) ? at + 2 : at + 1;
            rows.add(List.copyOf(row));
            row.clear();
        }
        return rows;
    }

    private static int readQuoted(String text, int start, StringBuilder cell) {
        int at = start + 1;
        while (at < text.length()) {
            if (text.charAt(at) == '"' && text.startsWith("\"\"", at)) {
                at++;
            } else if (text.charAt(at) == '"') {
                return at + 1;
            }
            cell.append(text.charAt(at++));
        }
        // No closing mark: it was a mark of its own, such as that of an inch.
        cell.setLength(0);
        return start;
    }

    private static String withoutGuard(String cell) {
        return cell.startsWith("'") && startsFormula(cell.substring(1)) ? cell.substring(1) : cell;
    }
}
