// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;

/**
 * What the test log of the open project held when it was last read: its newest entries, and of logs that were joined to it those that are
 * about the project's amplifier. {@link ProjectDesk#findEntry} finds the others.
 *
 * @param state whether it can be trusted
 * @param entries the entries in the order in which they were written; empty when there is no log
 * @param headHash the hash of the last entry; empty text when there is none
 * @param sentence what to tell the user of a state that is not the same each time, such as "28 entries, chain whole"
 * @param older how many older entries were left out, at least 0
 * @param others how many joined entries were left out because they are about other amplifiers, at least 0
 * @param clock what to tell of the computer's clock when it was set back just before the newest entries; else empty
 */
public record LogSnapshot(
        LogState state,
        List<LogEntry> entries,
        String headHash,
        String sentence,
        long older,
        long others,
        String clock) {
    private static final Messages TEXTS = Messages.of(LogSnapshot.class);

    /** So many entries are held at most: the newest. */
    public static final int MOST_ENTRIES = 50_000;

    /** Whether a log can be trusted. */
    public enum LogState {
        /** No project is open or it has no log yet. */
        NONE,
        /** The log is being read. */
        READING,
        /** Read, and every entry stands in the chain. */
        WHOLE,
        /** Read, but the chain is broken: something was changed outside Ohmstead. */
        BROKEN,
        /** It could not be read. */
        UNREADABLE
    }

    /** The snapshot when there is no log. */
    public static final LogSnapshot NONE = new LogSnapshot(LogState.NONE, List.of(), "", "");

    public LogSnapshot {
        entries = List.copyOf(entries);
        if (older < 0 || others < 0) {
            throw new IllegalArgumentException(
                    "older is " + older + " and others is " + others + "; neither may be below 0");
        }
    }

    /** Makes a snapshot that tells nothing of the clock. */
    public LogSnapshot(
            LogState state, List<LogEntry> entries, String headHash, String sentence, long older, long others) {
        this(state, entries, headHash, sentence, older, others, "");
    }

    /** Makes a snapshot that holds all entries. */
    public LogSnapshot(LogState state, List<LogEntry> entries, String headHash, String sentence) {
        this(state, entries, headHash, sentence, 0, 0, "");
    }

    /** Returns what to tell the user of the state, such as "28 entries, chain whole". */
    @Override
    public String sentence() {
        return switch (state) {
            case NONE -> TEXTS.text("log.none");
            case READING -> TEXTS.text("log.reading");
            case WHOLE, BROKEN, UNREADABLE -> sentence;
        };
    }

    /** Returns whether no entry was left out. */
    public boolean complete() {
        return older == 0 && others == 0;
    }

    /** Returns how many entries the log has, with those that were left out. */
    public long total() {
        return entries.size() + older + others;
    }

    /** Returns the readings that count: those of entries that are not voided, oldest first. */
    public List<Reading> validReadings() {
        return entries.stream()
                .filter(entry -> !entry.voided())
                .flatMap(entry -> entry.reading().stream())
                .toList();
    }

    /** Returns the entry with an id, or empty when it is not among those that are held. */
    public Optional<LogEntry> entry(String id) {
        return entries.stream().filter(entry -> entry.id().equals(id)).findFirst();
    }
}
