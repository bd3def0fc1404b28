// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.ohmstead.jobs.SharingState;

/** How the bottom of the window tells of the laboratory's shared log. */
final class SharingText {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

    private SharingText() {}

    /** Returns it in a few words; empty when there is nothing to tell. */
    static String brief(SharingState state, LocalDate today, ZoneId zone) {
        return switch (state.kind()) {
            case OFF -> "";
            case IN_STEP -> "Shared log in step";
            case HANDING_OVER -> state.waiting() == 0 ? "Handing over" : "Handing over " + state.waiting();
            case WAITING -> state.waiting() == 0 ? "Shared log waits" : waiting(state, today, zone);
            case STOPPED -> state.waiting() == 0
                    ? "Shared log stopped"
                    : "Stopped, " + state.waiting() + (state.waiting() == 1 ? " waits" : " wait");
        };
    }

    private static String waiting(SharingState state, LocalDate today, ZoneId zone) {
        return state.waiting()
                + (state.waiting() == 1 ? " waits" : " wait")
                + state.since()
                        .map(since -> " since " + moment(since, today, zone))
                        .orElse("");
    }

    /** Of an earlier day the day says more than the hour. */
    private static String moment(Instant instant, LocalDate today, ZoneId zone) {
        ZonedDateTime at = instant.atZone(zone);
        return at.toLocalDate().equals(today) ? TIME.format(at) : DAY.format(at);
    }

    /** Returns it in whole sentences, for the hover; empty when there is nothing to tell. */
    static String whole(SharingState state, LocalDate today, ZoneId zone) {
        if (state.kind() == SharingState.Kind.OFF) {
            return "";
        }
        String since = state.since()
                .map(instant -> "\nThe first of them was logged "
                        + (instant.atZone(zone).toLocalDate().equals(today) ? "at " : "on ")
                        + moment(instant, today, zone) + ".")
                .orElse("");
        String next = state.nextTry()
                .map(instant -> "\nThe next try is at "
                        + DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT).format(instant.atZone(zone)) + ".")
                .orElse("");
        String click = state.kind() == SharingState.Kind.WAITING || state.kind() == SharingState.Kind.STOPPED
                ? "\nClick to hand over now."
                : "";
        return state.sentence() + since + next + click;
    }
}
