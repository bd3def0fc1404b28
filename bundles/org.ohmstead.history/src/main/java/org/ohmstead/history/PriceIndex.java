// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Year;
import java.time.YearMonth;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import org.ohmstead.units.text.Messages;

/**
 * A price index as a table of months or years, supplied by the user. The file is CSV: UTF-8, a comma between the columns, a point as
 * decimal mark, the first line the header {@code period,index}; a period is a year "2024" or a month "2024-03", all of one kind, in any
 * order, each once; an index is above 0. Empty lines and lines that begin with # do not count.
 *
 * <p>Nothing is interpolated: a period that is not in the table has no index.
 *
 * @param name of the table, for messages
 * @param values by period
 */
public record PriceIndex(String name, Map<String, Double> values) {
    private static final Messages TEXTS = Messages.of(PriceIndex.class);
    private static final String HEADER = "period,index";
    private static final String YEAR = "\\d{4}";
    private static final String MONTH = "\\d{4}-(0[1-9]|1[0-2])";
    private static final int MOST_LINES = 100_000;
    private static final long LONGEST_FILE = 10_000_000;
    private static final int YEAR_LENGTH = 4;
    private static final int MONTH_LENGTH = 7;

    /** Copies the table. */
    public PriceIndex {
        values = Collections.unmodifiableMap(new TreeMap<>(values));
        if (values.isEmpty()) {
            throw new IllegalArgumentException("values is empty; an index needs at least one period");
        }
    }

    /**
     * Reads a table.
     *
     * @throws HistoryException when the file cannot be read or is written otherwise; the message names the line
     */
    public static PriceIndex read(Path file) throws HistoryException {
        String name = String.valueOf(file.getFileName());
        try {
            if (Files.size(file) > LONGEST_FILE) {
                throw new HistoryException(TEXTS.text("index.large", file.toString()));
            }
            return parse(name, Files.readString(file, StandardCharsets.UTF_8));
        } catch (CharacterCodingException notUtf8) {
            throw new HistoryException(TEXTS.text("index.notUtf8", file.toString()), notUtf8);
        } catch (IOException unreadable) {
            throw new HistoryException(TEXTS.text("index.unread", file.toString()), unreadable);
        }
    }

    /** Reads a table from its text; see {@link #read}. */
    public static PriceIndex parse(String name, String text) throws HistoryException {
        Map<String, Double> values = new TreeMap<>();
        boolean header = false;
        int number = 0;
        for (String line : text.replace("\uFEFF", "").split("\\R", MOST_LINES + 1)) {
            number++;
            String row = line.strip();
            if (number > MOST_LINES) {
                throw wrong(name, number, "many", "");
            }
            if (row.isEmpty() || row.startsWith("#")) {
                continue;
            }
            if (!header) {
                if (!row.replace(" ", "").equals(HEADER)) {
                    throw wrong(name, number, "header", HEADER);
                }
                header = true;
            } else {
                add(values, name, number, row);
            }
        }
        if (values.isEmpty()) {
            throw new HistoryException(TEXTS.text("index.empty", name));
        }
        return new PriceIndex(name, values);
    }

    private static void add(Map<String, Double> values, String name, int number, String row) throws HistoryException {
        String[] cells = row.split(",", -1);
        if (cells.length != 2) {
            throw wrong(name, number, "cells", "");
        }
        String period = cells[0].strip();
        if (!period.matches(YEAR) && !period.matches(MONTH)) {
            throw wrong(name, number, "period", "");
        }
        if (values.keySet().stream().anyMatch(other -> other.length() != period.length())) {
            throw wrong(name, number, "mixed", "");
        }
        String cell = cells[1].strip();
        if (!cell.matches("\\d{1,12}(\\.\\d{1,12})?") || !(Double.parseDouble(cell) > 0)) {
            throw wrong(name, number, "value", "");
        }
        if (values.put(period, Double.parseDouble(cell)) != null) {
            throw wrong(name, number, "twice", period);
        }
    }

    private static HistoryException wrong(String name, int number, String what, String part) {
        return new HistoryException(TEXTS.text("index.line." + what, Integer.toString(number), name, part));
    }

    /** Returns the period of the table's kind that a day lies in: "2024" or "2024-03". */
    public String periodOf(LocalDate day) {
        return isYearly() ? Year.from(day).toString() : YearMonth.from(day).toString();
    }

    private boolean isYearly() {
        return values.keySet().iterator().next().length() == YEAR_LENGTH;
    }

    /**
     * Returns the index of a period.
     *
     * @param period a year or a month, of the table's kind
     * @throws HistoryException when the table does not have it
     */
    public double at(String period) throws HistoryException {
        Double value = values.get(period);
        if (value != null) {
            return value;
        }
        TreeMap<String, Double> sorted = new TreeMap<>(values);
        if (period.length() != (isYearly() ? YEAR_LENGTH : MONTH_LENGTH)) {
            throw new HistoryException(TEXTS.text(isYearly() ? "index.years" : "index.months", name, period));
        }
        boolean gap = period.compareTo(sorted.firstKey()) > 0 && period.compareTo(sorted.lastKey()) < 0;
        throw new HistoryException(
                gap
                        ? TEXTS.text("index.gap", name, period, sorted.lowerKey(period), sorted.higherKey(period))
                        : TEXTS.text("index.outside", name, period, sorted.firstKey(), sorted.lastKey()));
    }

    /**
     * Returns by what a price is multiplied to compare it with one of the base period: index(base) / index(bought).
     *
     * @param bought day for which the price holds
     * @param base period of the table
     * @throws HistoryException when the table lacks one of the two
     */
    public double factor(LocalDate bought, String base) throws HistoryException {
        return at(base) / at(periodOf(bought));
    }
}
