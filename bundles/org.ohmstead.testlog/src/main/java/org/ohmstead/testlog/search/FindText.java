// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.ohmstead.testlog.EntryKind;

/** Writes a query as a text. */
final class FindText {
    private static final int LAST_YEAR = 9999;

    private final List<String> parts = new ArrayList<>();

    private FindText() {}

    static String of(Find find) {
        return new FindText().write(find);
    }

    private String write(Find find) {
        text(FindKey.AMPLIFIER, find.amplifier());
        text(FindKey.SERIAL, find.serialNumber());
        text(FindKey.BENCH, find.bench());
        text(FindKey.OPERATOR, find.operator());
        find.mode().ifPresent(mode -> part(FindKey.MODE, mode.name().toLowerCase(Locale.ROOT)));
        find.loadOhms().ifPresent(ohms -> part(FindKey.LOAD, Double.toString(ohms)));
        if (!find.loadId().isEmpty()) {
            boolean likeOhms = FindParser.ohms(find.loadId()).isPresent();
            part(FindKey.LOAD, likeOhms ? inQuotes(find.loadId()) : quoted(find.loadId()));
        }
        text(FindKey.STEP, find.stepId());
        text(FindKey.CHAIN, find.chain());
        find.from().ifPresent(from -> part(FindKey.FROM, moment(from, 0)));
        find.to().ifPresent(to -> part(FindKey.TO, moment(to, 1)));
        find.ranges()
                .forEach(range -> parts.add(range.figureId() + ":" + end(range.least()) + ".." + end(range.most())));
        if (!find.kinds().isEmpty()) {
            part(
                    FindKey.KIND,
                    find.kinds().stream().sorted().map(EntryKind::word).collect(Collectors.joining(",")));
        }
        if (!find.states().isEmpty()) {
            part(
                    FindKey.STATE,
                    find.states().stream()
                            .sorted(Comparator.naturalOrder())
                            .map(EntryState::word)
                            .collect(Collectors.joining(",")));
        }
        if (find.overdueOnly()) {
            part(FindKey.OVERDUE, FindParser.YES);
        }
        find.words().forEach(word -> parts.add(word.indexOf(':') >= 0 ? inQuotes(word) : quoted(word)));
        return String.join(" ", parts);
    }

    private void text(FindKey key, String value) {
        if (!value.isEmpty()) {
            part(key, quoted(value));
        }
    }

    private void part(FindKey key, String value) {
        parts.add(key.word() + ":" + value);
    }

    private static String quoted(String value) {
        boolean plain = value.chars().noneMatch(each -> Character.isWhitespace(each) || each == '"');
        return plain ? value : inQuotes(value);
    }

    private static String inQuotes(String value) {
        return '"' + value.replace("\"", "\"\"") + '"';
    }

    /** A day's beginning is written as that day; for an end, which lies behind it, as the day before. */
    private static String moment(Instant moment, int daysBack) {
        if (moment.isBefore(Instant.EPOCH)) {
            return moment.toString();
        }
        OffsetDateTime time = moment.atOffset(ZoneOffset.UTC);
        LocalDate day = time.toLocalDate();
        boolean whole = time.toLocalTime().equals(LocalTime.MIDNIGHT) && day.getYear() <= LAST_YEAR;
        return whole ? day.minusDays(daysBack).toString() : moment.toString();
    }

    private static String end(double value) {
        return Double.isInfinite(value) ? "" : Double.toString(value);
    }
}
