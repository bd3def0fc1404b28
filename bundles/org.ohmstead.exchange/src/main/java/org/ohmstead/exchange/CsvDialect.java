// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.util.Arrays;
import java.util.Optional;

/**
 * How a table is written as text. Both kinds are UTF-8, quoted by RFC 4180 (a cell that holds the separator, a quotation mark or a line
 * break stands in quotation marks, and a quotation mark in it is doubled), with lines that end with CR LF; a reader takes LF alone too.
 * Numbers have no thousands separator. Times are UTC in ISO 8601. Nothing chooses a kind by itself, least of all the machine's locale.
 */
public enum CsvDialect {
    /** Comma between cells, decimal point; the first line holds the headings. What other programs expect. */
    COMMA(',', '.', ""),
    /**
     * Semicolon between cells, decimal comma, a byte order mark in front, for spreadsheets set to a language that writes numbers so.
     * The first line names the dialect, the second holds the headings.
     */
    SEMICOLON(';', ',', "# Ohmstead table: semicolon between cells, decimal comma, UTF-8");

    private final char separator;
    private final char decimalMark;
    private final String firstLine;

    CsvDialect(char separator, char decimalMark, String firstLine) {
        this.separator = separator;
        this.decimalMark = decimalMark;
        this.firstLine = firstLine;
    }

    /** Returns what stands between two cells. */
    public char separator() {
        return separator;
    }

    /** Returns the decimal mark. */
    public char decimalMark() {
        return decimalMark;
    }

    /** Returns the line before the headings that names the dialect; empty when there is none. */
    public String firstLine() {
        return firstLine;
    }

    /** Returns the dialect that a file's first line names, or empty when it names none. */
    public static Optional<CsvDialect> namedBy(String line) {
        return Arrays.stream(values())
                .filter(dialect -> !dialect.firstLine.isEmpty() && line.startsWith(dialect.firstLine))
                .findFirst();
    }
}
