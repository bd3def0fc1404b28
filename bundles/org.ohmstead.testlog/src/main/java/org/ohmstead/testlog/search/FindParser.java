// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.units.text.Messages;

/** Reads a query from a text. */
final class FindParser {
    private static final Messages TEXTS = Messages.of(FindParser.class);
    private static final Set<FindKey> MORE_THAN_ONCE = EnumSet.of(FindKey.KIND, FindKey.STATE, FindKey.LOAD);
    private static final Set<FindKey> CHOICES = EnumSet.of(FindKey.KIND, FindKey.STATE, FindKey.MODE, FindKey.OVERDUE);
    static final String YES = "yes";

    private static final String RANGE_MARK = "..";

    private final FindDraft draft = new FindDraft(Find.EVERYTHING);
    private final Set<FindKey> written = EnumSet.noneOf(FindKey.class);
    private boolean loadOhmsWritten;
    private boolean loadIdWritten;

    private FindParser() {}

    static Find parse(String text) throws FindException {
        FindParser parser = new FindParser();
        for (FindToken token : FindToken.split(text)) {
            parser.take(token);
        }
        return parser.draft.find();
    }

    private void take(FindToken token) throws FindException {
        if (token.key().isEmpty()) {
            draft.word(token.value());
            return;
        }
        if (token.value().isBlank() && !token.quoted() || token.value().isEmpty()) {
            throw new FindException(TEXTS.text("query.empty", token.key()));
        }
        Optional<FindKey> key = FindKey.ofWord(token.key().toLowerCase(Locale.ROOT));
        if (key.isPresent()) {
            condition(key.get(), token);
        } else {
            range(token);
        }
    }

    private void condition(FindKey key, FindToken token) throws FindException {
        if (!written.add(key) && !MORE_THAN_ONCE.contains(key)) {
            throw twice(key);
        }
        if (CHOICES.contains(key)) {
            choice(key, token.value());
            return;
        }
        switch (key) {
            case LOAD -> load(token);
            case FROM -> draft.from(Optional.of(moment(key, token.value(), 0)));
            case TO -> draft.to(Optional.of(moment(key, token.value(), 1)));
            default -> draft.text(key, token.value());
        }
    }

    private void choice(FindKey key, String value) throws FindException {
        boolean several = key == FindKey.KIND || key == FindKey.STATE;
        for (String word : several ? value.split(",", -1) : new String[] {value}) {
            if (key == FindKey.KIND) {
                draft.kind(named(key, word, EntryKind.values(), EntryKind::word));
            } else if (key == FindKey.STATE) {
                draft.state(named(key, word, EntryState.values(), EntryState::word));
            } else if (key == FindKey.MODE) {
                draft.mode(Optional.of(
                        named(key, word, Mode.values(), mode -> mode.name().toLowerCase(Locale.ROOT))));
            } else {
                draft.overdueOnly(
                        named(key, word, new String[] {YES, "no"}, each -> each).equals(YES));
            }
        }
    }

    private static FindException twice(FindKey key) {
        return new FindException(TEXTS.text("query.twice", key.word()));
    }

    private static <T> T named(FindKey key, String word, T[] values, Function<T, String> name) throws FindException {
        String wanted = word.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(values)
                .filter(value -> name.apply(value).equals(wanted))
                .findFirst()
                .orElseThrow(() -> new FindException(TEXTS.text(
                        "query.unknownWord",
                        word,
                        key.word(),
                        Arrays.stream(values).map(name).collect(Collectors.joining(", ")))));
    }

    private void load(FindToken token) throws FindException {
        OptionalDouble ohms = token.quoted() ? OptionalDouble.empty() : ohms(token.value());
        if (ohms.isPresent() ? loadOhmsWritten : loadIdWritten) {
            throw twice(FindKey.LOAD);
        }
        if (ohms.isPresent()) {
            loadOhmsWritten = true;
            draft.loadOhms(ohms);
        } else {
            loadIdWritten = true;
            draft.text(FindKey.LOAD, token.value());
        }
    }

    /** Returns the ohms that a text means, or empty when it must be a load's id. */
    static OptionalDouble ohms(String text) {
        try {
            double ohms = number(text.endsWith("\u03a9") ? text.substring(0, text.length() - 1) : text);
            return ohms > 0 && Double.isFinite(ohms) ? OptionalDouble.of(ohms) : OptionalDouble.empty();
        } catch (NumberFormatException anId) {
            return OptionalDouble.empty();
        }
    }

    private static double number(String text) {
        if (!text.matches("[-+]?([0-9]+[.]?[0-9]*|[.][0-9]+)([eE][-+]?[0-9]+)?")) {
            throw new NumberFormatException("not a number: " + text);
        }
        return Double.parseDouble(text);
    }

    private static Instant moment(FindKey key, String text, int daysOn) throws FindException {
        try {
            return text.indexOf('T') >= 0
                    ? Instant.parse(text)
                    : LocalDate.parse(text).plusDays(daysOn).atStartOfDay().toInstant(ZoneOffset.UTC);
        } catch (DateTimeParseException wrong) {
            throw new FindException(TEXTS.text("query.day", text, key.word()), wrong);
        } catch (DateTimeException tooFar) {
            throw new FindException(TEXTS.text("query.far", text, key.word()), tooFar);
        }
    }

    private void range(FindToken token) throws FindException {
        String id = token.key();
        String value = token.value();
        boolean ofReadings = FigureRange.OF_READINGS.contains(id.toLowerCase(Locale.ROOT));
        int mark = value.indexOf(RANGE_MARK);
        if (mark < 0 && !ofReadings) {
            throw new FindException(TEXTS.text(
                    "query.unknownKey",
                    id,
                    Arrays.stream(FindKey.values()).map(FindKey::word).collect(Collectors.joining(", "))));
        }
        double least;
        double most;
        try {
            least = mark < 0 ? figure(value) : end(value.substring(0, mark), Double.NEGATIVE_INFINITY);
            most = mark < 0 ? least : end(value.substring(mark + RANGE_MARK.length()), Double.POSITIVE_INFINITY);
        } catch (NumberFormatException wrong) {
            throw new FindException(TEXTS.text("query.noRange", value, id), wrong);
        }
        try {
            draft.range(new FigureRange(id, least, most));
        } catch (IllegalArgumentException wrong) {
            boolean ends = FigureRange.isId(id);
            throw new FindException(
                    TEXTS.text(
                            ends ? "query.wrongRange.ends" : "query.wrongRange.name",
                            id,
                            value,
                            Double.toString(least),
                            Double.toString(most)),
                    wrong);
        }
    }

    private static double end(String text, double none) {
        return text.isEmpty() ? none : figure(text);
    }

    private static double figure(String text) {
        boolean percent = text.endsWith("%");
        double number = number(percent ? text.substring(0, text.length() - 1) : text);
        return percent ? number / 100 : number;
    }
}
