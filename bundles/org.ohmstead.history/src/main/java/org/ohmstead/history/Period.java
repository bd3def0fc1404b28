// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/**
 * A span of whole days, by the clock of UTC.
 *
 * @param from first day; empty for since ever
 * @param to last day; empty for until now
 */
public record Period(Optional<LocalDate> from, Optional<LocalDate> to) {
    private static final Messages TEXTS = Messages.of(Period.class);

    /** All time. */
    public static final Period ALWAYS = new Period(Optional.empty(), Optional.empty());

    private static final String DOTS = "..";
    private static final int YEAR_LENGTH = 4;
    private static final int MONTH_LENGTH = 7;

    /** Checks that the last day is not before the first. */
    public Period {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        if (from.isPresent() && to.isPresent() && to.get().isBefore(from.get())) {
            throw new IllegalArgumentException("to is " + to.get() + "; it must not be before from, " + from.get());
        }
    }

    /**
     * Reads a period: one year, month or day such as "2024", "2024-03" or "2024-03-09", or two of them with ".." between, of which one may
     * be missing.
     *
     * @throws HistoryException when it is written otherwise
     */
    public static Period parse(String text) throws HistoryException {
        String stripped = text.strip();
        int dots = stripped.indexOf(DOTS);
        String first = dots < 0 ? stripped : stripped.substring(0, dots);
        String last = dots < 0 ? stripped : stripped.substring(dots + DOTS.length());
        try {
            if (first.isEmpty() && last.isEmpty()) {
                throw new IllegalArgumentException("neither end is there");
            }
            return new Period(
                    first.isEmpty() ? Optional.empty() : Optional.of(firstDay(first)),
                    last.isEmpty() ? Optional.empty() : Optional.of(lastDay(last)));
        } catch (DateTimeException | IllegalArgumentException wrong) {
            throw new HistoryException(TEXTS.text("period.wrong", text), wrong);
        }
    }

    private static LocalDate firstDay(String text) {
        return switch (text.length()) {
            case YEAR_LENGTH -> LocalDate.parse(text + "-01-01");
            case MONTH_LENGTH -> LocalDate.parse(text + "-01");
            default -> LocalDate.parse(text);
        };
    }

    private static LocalDate lastDay(String text) {
        return switch (text.length()) {
            case YEAR_LENGTH -> LocalDate.parse(text + "-12-31");
            case MONTH_LENGTH -> YearMonth.parse(text).atEndOfMonth();
            default -> LocalDate.parse(text);
        };
    }

    /** Returns whether a moment lies in it. */
    public boolean contains(Instant moment) {
        LocalDate day = moment.atZone(ZoneOffset.UTC).toLocalDate();
        return from.map(first -> !day.isBefore(first)).orElse(true)
                && to.map(last -> !day.isAfter(last)).orElse(true);
    }

    /** Returns it in words: "2024-01-01 to 2024-12-31", "since 2024-01-01", or nothing for all time. */
    public String words() {
        if (from.isPresent() && to.isPresent()) {
            String first = from.get().toString();
            return from.get().equals(to.get())
                    ? first
                    : TEXTS.text("period.both", first, to.get().toString());
        }
        return from.map(first -> TEXTS.text("period.since", first.toString()))
                .or(() -> to.map(last -> TEXTS.text("period.until", last.toString())))
                .orElse("");
    }
}
