// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/**
 * How the laboratory's shared log stands to the log of a project.
 *
 * @param kind in short
 * @param place where the shared log lies, as {@code host:port/database}; empty only when the project names none
 * @param waiting number of entries that were added here and are not yet known to be there, at least 0
 * @param handedOver number of entries that were handed over since the hand-over was begun, at least 0
 * @param since when the first of the waiting entries was added; empty when that is not known
 * @param why what went wrong the last time and what to do, in whole sentences; empty when nothing did
 * @param nextTry when it will be tried again by itself; empty when it will not, or need not
 */
public record SharingState(
        Kind kind,
        String place,
        long waiting,
        long handedOver,
        Optional<Instant> since,
        String why,
        Optional<Instant> nextTry) {
    private static final Messages TEXTS = Messages.of(SharingState.class);

    /** In short. */
    public enum Kind {
        /** The project names no shared log. */
        OFF,
        /** Everything was handed over. */
        IN_STEP,
        /** Entries are being handed over. */
        HANDING_OVER,
        /** It could not be handed over yet; it will be tried again. */
        WAITING,
        /** People must put something right before it goes on. */
        STOPPED
    }

    /** The state of a project that names no shared log. */
    public static final SharingState OFF = new SharingState(Kind.OFF, "", 0, 0, Optional.empty(), "", Optional.empty());

    public SharingState {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(since, "since");
        Objects.requireNonNull(why, "why");
        Objects.requireNonNull(nextTry, "nextTry");
        if (waiting < 0 || handedOver < 0) {
            throw new IllegalArgumentException(
                    "waiting is " + waiting + " and handedOver is " + handedOver + "; neither may be below 0");
        }
    }

    /** Returns it in whole sentences for people. */
    public String sentence() {
        return switch (kind) {
            case OFF -> TEXTS.text("shared.off");
            case IN_STEP -> handedOver == 0 ? TEXTS.text("shared.inStep", place) : counted("shared.inStep", handedOver);
            case HANDING_OVER ->
                waiting == 0 ? TEXTS.text("shared.checking", place) : counted("shared.handing", waiting);
            case WAITING, STOPPED ->
                (waiting == 0 ? TEXTS.text("shared.unknown", place) : counted("shared.waiting", waiting))
                        + (why.isEmpty() ? "" : " " + why);
        };
    }

    private String counted(String key, long entries) {
        return TEXTS.text(key + (entries == 1 ? ".one" : ".many"), place, Long.toString(entries));
    }
}
