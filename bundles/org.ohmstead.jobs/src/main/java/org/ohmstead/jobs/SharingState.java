// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

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
            case OFF -> "The project names no shared log.";
            case IN_STEP -> "The shared log " + place + " has all entries of this log"
                    + (handedOver == 0 ? "." : "; " + entries(handedOver, "was", "were") + " handed over.");
            case HANDING_OVER -> waiting == 0
                    ? "It is being seen to that the shared log " + place + " has all entries of this log."
                    : entries(waiting, "is", "are") + " being handed over to the shared log " + place + ".";
            case WAITING, STOPPED -> (waiting == 0
                            ? "It is not known whether the shared log " + place + " has all entries of this log."
                            : entries(waiting, "waits", "wait") + " here for the shared log " + place + ".")
                    + (why.isEmpty() ? "" : " " + why);
        };
    }

    private static String entries(long count, String one, String several) {
        return count + (count == 1 ? " entry " + one : " entries " + several);
    }
}
