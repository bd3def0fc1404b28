// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.units.text.Messages;

/** How the bottom of the window tells of the laboratory's shared log. */
final class SharingText {
    private static final Messages TEXTS = Messages.of(SharingText.class);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter SECOND = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    private SharingText() {}

    /** Returns it in a few words; empty when there is nothing to tell. */
    static String brief(SharingState state, LocalDate today, ZoneId zone) {
        long waiting = state.waiting();
        return switch (state.kind()) {
            case OFF -> "";
            case IN_STEP -> TEXTS.text("shared.inStep");
            case HANDING_OVER ->
                waiting == 0
                        ? TEXTS.text("shared.handingOver")
                        : TEXTS.text("shared.handingOver.some", Long.toString(waiting));
            case WAITING -> waiting == 0 ? TEXTS.text("shared.waits") : waiting(state, today, zone);
            case STOPPED ->
                waiting == 0
                        ? TEXTS.text("shared.stopped")
                        : TEXTS.text("shared.stopped." + number(waiting), Long.toString(waiting));
        };
    }

    private static String number(long count) {
        return count == 1 ? "one" : "many";
    }

    private static String waiting(SharingState state, LocalDate today, ZoneId zone) {
        String count = Long.toString(state.waiting());
        String number = number(state.waiting());
        return state.since()
                .map(since -> TEXTS.text("shared.waiting.since." + number, count, moment(since, today, zone)))
                .orElseGet(() -> TEXTS.text("shared.waiting." + number, count));
    }

    /** Of an earlier day the day says more than the hour. */
    private static String moment(Instant instant, LocalDate today, ZoneId zone) {
        ZonedDateTime at = instant.atZone(zone);
        return at.toLocalDate().equals(today) ? TIME.format(at) : day().format(at);
    }

    /** The form of the language alone: each country has its own idea of how a month is shortened. */
    private static DateTimeFormatter day() {
        return DateTimeFormatter.ofPattern(
                TEXTS.text("shared.day"), Locale.forLanguageTag(TEXTS.locale().getLanguage()));
    }

    /** Returns it in whole sentences, for the hover; empty when there is nothing to tell. */
    static String whole(SharingState state, LocalDate today, ZoneId zone) {
        if (state.kind() == SharingState.Kind.OFF) {
            return "";
        }
        List<String> sentences = new ArrayList<>();
        sentences.add(state.sentence());
        state.since()
                .map(instant -> TEXTS.text(
                        instant.atZone(zone).toLocalDate().equals(today) ? "shared.first.at" : "shared.first.on",
                        moment(instant, today, zone)))
                .ifPresent(sentences::add);
        state.nextTry()
                .map(instant -> TEXTS.text("shared.nextTry", SECOND.format(instant.atZone(zone))))
                .ifPresent(sentences::add);
        if (state.kind() == SharingState.Kind.WAITING || state.kind() == SharingState.Kind.STOPPED) {
            sentences.add(TEXTS.text("shared.click"));
        }
        return String.join("\n", sentences);
    }
}
