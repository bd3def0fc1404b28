// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * How the shared log stands to a bench's own.
 *
 * @param kind in short
 * @param waiting number of entries that were added here and are not yet known to be there
 * @param since when the first of them was added; empty when there is none
 * @param why what went wrong the last time, in whole sentences; empty when nothing did
 * @param nextTry when it will be tried again by itself; empty when it will not, or need not
 */
public record LabSyncState(Kind kind, long waiting, Optional<Instant> since, String why, Optional<Instant> nextTry) {
    /** In short. */
    public enum Kind {
        /** The project names no shared log. */
        OFF,
        /** Everything was handed over. */
        IN_STEP,
        /** Entries are being handed over. */
        HANDING_OVER,
        /** The server could not be reached; it will be tried again. */
        WAITING,
        /** Something must be put right by people before it goes on; see {@link LabSync#retry}. */
        STOPPED
    }

    /** The state of a project that names no shared log. */
    public static final LabSyncState OFF = new LabSyncState(Kind.OFF, 0, Optional.empty(), "", Optional.empty());

    public LabSyncState {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(since, "since");
        Objects.requireNonNull(why, "why");
        Objects.requireNonNull(nextTry, "nextTry");
        if (waiting < 0) {
            throw new IllegalArgumentException("waiting is " + waiting + "; it must be at least 0");
        }
    }
}
