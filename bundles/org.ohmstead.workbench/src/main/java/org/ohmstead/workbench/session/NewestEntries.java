// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.EntryReader;
import org.ohmstead.testlog.chain.RowSource;

/** Reads a log from its end towards its beginning until there are enough entries; whether they fit together is not its matter. */
final class NewestEntries {
    private static final int PAGE = 1000;
    private static final Map<String, VoidNote> NO_VOIDS = Map.of();

    private final RowSource rows;
    private final String where;
    private final String amplifier;
    private final int most;
    private final Map<String, LogEntry> known = new HashMap<>();
    private final Map<String, ChainInfo> chains = new HashMap<>();
    private final Map<String, VoidNote> voids = new HashMap<>();
    private final Deque<LogEntry> kept = new ArrayDeque<>();
    private int others;

    private NewestEntries(RowSource rows, String where, String amplifier, int most) {
        this.rows = rows;
        this.where = where;
        this.amplifier = amplifier;
        this.most = most;
    }

    /**
     * What was read.
     *
     * @param entries in the order of the log
     * @param older how many were not looked at
     * @param others how many joined ones were left out, since they are about other amplifiers
     */
    record Newest(List<LogEntry> entries, long older, long others) {}

    /**
     * Reads.
     *
     * @param where what is read, for the sentence of a failure
     * @param amplifier what joined entries must be about, unless they do not say
     * @param before entries that were read earlier; those that are still the same are not made anew
     * @param most how many to look at, at most
     */
    static Newest read(RowSource rows, String where, String amplifier, List<LogEntry> before, int most)
            throws TestLogException {
        NewestEntries newest = new NewestEntries(rows, where, amplifier, most);
        before.forEach(entry -> newest.known.put(entry.hash(), entry));
        long total = 0;
        Optional<ChainInfo> own = Optional.empty();
        for (ChainInfo chain : rows.chains()) {
            newest.chains.put(chain.label(), chain);
            total += chain.entries();
            own = own.isEmpty() && chain.label().isEmpty() ? Optional.of(chain) : own;
        }
        if (own.isPresent()) {
            newest.back(own.get(), own.get().firstSequence() - 1, own.get().lastSequence());
        }
        long looked = newest.looked();
        return new Newest(List.copyOf(newest.kept), Math.max(0, total - looked), newest.others);
    }

    private int looked() {
        return kept.size() + others;
    }

    /** Takes the entries of a chain after one number up to another, the last first. */
    private void back(ChainInfo chain, long after, long last) throws TestLogException {
        long end = last;
        while (end > after && looked() < most) {
            long start = Math.max(after, end - PAGE);
            List<ChainedRow> page = rows.rows(chain.chain(), start, (int) (end - start));
            for (int index = page.size() - 1; index >= 0 && looked() < most; index--) {
                take(chain.label(), page.get(index));
            }
            end = start;
        }
    }

    private void take(String label, ChainedRow row) throws TestLogException {
        LogEntry entry = entry(label, row);
        entry.voids().ifPresent(note -> voids.put(note.targetId(), note));
        if (wanted(entry)) {
            kept.addFirst(entry);
        } else {
            others++;
        }
        if (entry.join().isPresent() && label.isEmpty()) {
            JoinNote note = entry.join().get();
            ChainInfo joined = chains.get(note.label());
            if (joined != null) {
                back(joined, note.afterSequence(), note.lastSequence());
            }
        }
    }

    /** What takes an entry back always stands behind it, so that it is known by now. */
    private LogEntry entry(String label, ChainedRow row) throws TestLogException {
        LogEntry before = known.get(row.hash());
        if (before != null
                && before.chain().equals(label)
                && before.voidedBy().equals(Optional.ofNullable(voids.get(before.id())))) {
            return before;
        }
        LogEntry bare = EntryReader.entry(where, row, label, NO_VOIDS);
        return voids.containsKey(bare.id()) ? EntryReader.entry(where, row, label, voids) : bare;
    }

    private boolean wanted(LogEntry entry) {
        if (entry.chain().isEmpty()) {
            return true;
        }
        Optional<Provenance> provenance = entry.reading()
                .map(Reading::provenance)
                .or(() -> entry.figures().map(MeasuredFigures::provenance));
        return provenance
                .flatMap(Provenance::specimen)
                .map(specimen -> specimen.amplifier().equalsIgnoreCase(amplifier))
                .orElse(true);
    }
}
