// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.model.Mode;

/**
 * Which entries of the log are wanted. A condition on mode, load or step is met by readings and figures only.
 *
 * @param kinds which kinds; at least one
 * @param mode only readings and figures in this mode
 * @param loadId only readings and figures into this load
 * @param stepId only readings and figures of this step
 * @param since only entries added at this moment or later
 * @param includeVoided whether entries that were voided are wanted too
 * @param includeJoined whether entries that came with other logs' chains are wanted too
 */
public record LogQuery(
        Set<EntryKind> kinds,
        Optional<Mode> mode,
        Optional<String> loadId,
        Optional<String> stepId,
        Optional<Instant> since,
        boolean includeVoided,
        boolean includeJoined) {
    public LogQuery {
        kinds = Set.copyOf(kinds);
        if (kinds.isEmpty()) {
            throw new IllegalArgumentException("kinds is empty; it needs at least one kind of entry");
        }
        Objects.requireNonNull(mode, "mode");
        Objects.requireNonNull(loadId, "loadId");
        Objects.requireNonNull(stepId, "stepId");
        Objects.requireNonNull(since, "since");
    }

    /** Makes a query that joined entries can meet as well. */
    public LogQuery(
            Set<EntryKind> kinds,
            Optional<Mode> mode,
            Optional<String> loadId,
            Optional<String> stepId,
            Optional<Instant> since,
            boolean includeVoided) {
        this(kinds, mode, loadId, stepId, since, includeVoided, true);
    }

    /** Returns a query for every entry, voided ones and voids included. */
    public static LogQuery everything() {
        return new LogQuery(
                Set.of(EntryKind.values()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                true);
    }

    /** Returns a query for what measurements found and counts: figures, without the readings. */
    public static LogQuery validFigures() {
        return new LogQuery(
                Set.of(EntryKind.FIGURES),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
    }

    /** Returns a query for the readings that count. */
    public static LogQuery validReadings() {
        return new LogQuery(
                Set.of(EntryKind.READING),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
    }

    /** Returns this query for readings and figures in one mode. */
    public LogQuery withMode(Mode wanted) {
        return new LogQuery(kinds, Optional.of(wanted), loadId, stepId, since, includeVoided, includeJoined);
    }

    /** Returns this query for readings and figures into one load. */
    public LogQuery withLoad(String wanted) {
        return new LogQuery(kinds, mode, Optional.of(wanted), stepId, since, includeVoided, includeJoined);
    }

    /** Returns this query for readings and figures of one step. */
    public LogQuery withStep(String wanted) {
        return new LogQuery(kinds, mode, loadId, Optional.of(wanted), since, includeVoided, includeJoined);
    }

    /** Returns this query for entries added at a moment or later. */
    public LogQuery withSince(Instant wanted) {
        return new LogQuery(kinds, mode, loadId, stepId, Optional.of(wanted), includeVoided, includeJoined);
    }

    /** Returns this query with voided entries or without. */
    public LogQuery withVoided(boolean wanted) {
        return new LogQuery(kinds, mode, loadId, stepId, since, wanted, includeJoined);
    }

    /** Returns this query with joined entries or without. */
    public LogQuery withJoined(boolean wanted) {
        return new LogQuery(kinds, mode, loadId, stepId, since, includeVoided, wanted);
    }

    /** Returns whether an entry is wanted. */
    public boolean matches(LogEntry entry) {
        boolean asEntry = kinds.contains(entry.kind())
                && (includeVoided || !entry.voided())
                && (includeJoined || !entry.joined())
                && since.map(moment -> !entry.recordedAt().isBefore(moment)).orElse(true);
        boolean anyStep = mode.isEmpty() && loadId.isEmpty() && stepId.isEmpty();
        boolean wantedStep = entry.reading()
                .map(reading -> matches(reading.mode(), reading.loadId(), reading.stepId()))
                .or(() -> entry.figures().map(figures -> matches(figures.mode(), figures.loadId(), figures.stepId())))
                .orElse(anyStep);
        return asEntry && wantedStep;
    }

    private boolean matches(Mode entryMode, String entryLoadId, String entryStepId) {
        return mode.map(wanted -> entryMode == wanted).orElse(true)
                && loadId.map(entryLoadId::equals).orElse(true)
                && stepId.map(entryStepId::equals).orElse(true);
    }
}
