// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** Rows of a sheet, and of the sheets that it goes on in when it is full. */
public final class SheetRows implements AutoCloseable {
    private static final int LONGEST_TEXT = 32_767;
    private static final int FLUSH_ROWS = 200;
    private static final String TIME_FORMAT = "yyyy-mm-dd hh:mm:ss.000";
    private static final double LONGEST_WIDTH = 30;

    private final Workbook book;
    private final String name;
    private final List<String> headings;
    private final int mostRows;
    private Worksheet sheet;
    private int parts;
    private int row;

    /** Begins the sheet with its headings. */
    public SheetRows(Workbook book, String name, List<String> headings) throws IOException {
        this(book, name, headings, Worksheet.MAX_ROWS);
    }

    SheetRows(Workbook book, String name, List<String> headings, int mostRows) throws IOException {
        this.book = book;
        this.name = name;
        this.headings = headings;
        this.mostRows = mostRows;
        begin();
    }

    private void begin() {
        parts++;
        sheet = book.newWorksheet(parts == 1 ? name : name + " " + parts);
        sheet.freezePane(0, 1);
        for (int column = 0; column < headings.size(); column++) {
            sheet.width(
                    column,
                    Math.min(LONGEST_WIDTH, Math.max(12, headings.get(column).length() + 3.0)));
            sheet.inlineString(0, column, headings.get(column));
            sheet.style(0, column).bold().set();
        }
        row = 1;
    }

    /** Adds a row. */
    public void addOrStop(List<Cell> cells) {
        try {
            if (row == mostRows) {
                sheet.close();
                begin();
            }
            for (int column = 0; column < cells.size(); column++) {
                put(column, cells.get(column));
            }
            row++;
            if (row % FLUSH_ROWS == 0) {
                sheet.flush();
            }
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    private void put(int column, Cell cell) {
        if (cell instanceof Cell.Number number) {
            sheet.value(row, column, number.value());
        } else if (cell instanceof Cell.Time time) {
            sheet.value(row, column, LocalDateTime.ofInstant(time.moment(), ZoneOffset.UTC));
            sheet.style(row, column).format(TIME_FORMAT).set();
        } else {
            String text = ((Cell.Text) cell).text();
            if (!text.isEmpty()) {
                sheet.inlineString(row, column, SheetText.escaped(fit(text)));
            }
        }
    }

    private static String fit(String text) {
        if (text.length() <= LONGEST_TEXT) {
            return text;
        }
        int end = LONGEST_TEXT - 1;
        return text.substring(0, Character.isHighSurrogate(text.charAt(end - 1)) ? end - 1 : end) + "\u2026";
    }

    @Override
    public void close() throws IOException {
        sheet.close();
    }
}
