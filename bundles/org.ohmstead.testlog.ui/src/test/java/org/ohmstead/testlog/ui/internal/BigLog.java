// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Semaphore;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.search.EntryState;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.IndexState;
import org.ohmstead.testlog.search.IndexedEntry;

/**
 * A log of very many readings, none of which exists before it is asked for. Every fourth is bridged; a query for bridged ones finds those.
 */
final class BigLog implements EntryFinder {
    private static final Instant BEGIN = Instant.parse("2020-01-01T00:00:00Z");

    private final int entries;
    private final int toIndex;
    /** What the index may learn: a bite for each permit. */
    final Semaphore bites = new Semaphore(Integer.MAX_VALUE);

    private int indexed;
    int pagesRead;

    /**
     * Makes a log.
     *
     * @param entries how many it has
     * @param toIndex how many of them the index learns at a time
     */
    BigLog(int entries, int toIndex) {
        this.entries = entries;
        this.toIndex = toIndex;
    }

    @Override
    public IndexState state() {
        return new IndexState(indexed, entries, true, "");
    }

    @Override
    public void refresh(IndexProgress progress) {
        bites.acquireUninterruptibly();
        indexed = Math.min(entries, indexed + toIndex);
    }

    @Override
    public Found find(Find find, FindOrder order) {
        int step = find.mode().filter(mode -> mode == Mode.BRIDGED).isPresent() ? 4 : 1;
        int count = indexed / step;
        return new Found() {
            @Override
            public int size() {
                return count;
            }

            @Override
            public List<IndexedEntry> page(int from, int most) {
                pagesRead++;
                List<IndexedEntry> page = new ArrayList<>();
                for (int place = from; place < Math.min(count, from + most); place++) {
                    page.add(entry((order.falling() ? count - 1 - place : place) * step + step));
                }
                return page;
            }

            @Override
            public int indexOf(String entryId) {
                int sequence = Integer.parseInt(entryId.substring(1));
                return sequence % step == 0 && sequence <= indexed ? sequence / step - 1 : -1;
            }
        };
    }

    private static IndexedEntry entry(int sequence) {
        boolean bridged = sequence % 4 == 0;
        return new IndexedEntry(
                "",
                sequence,
                String.format(Locale.ROOT, "R%07d", sequence),
                EntryKind.READING,
                BEGIN.plusSeconds(sequence),
                Optional.of(BEGIN.plusSeconds(sequence)),
                "Larkspur",
                "",
                "",
                "N. N.",
                Optional.of(bridged ? Mode.BRIDGED : Mode.STEREO),
                "4ohm",
                OptionalDouble.of(4),
                OptionalDouble.of(12 + sequence % 30 / 10.0),
                bridged ? "bridged-4ohm" : "stereo-4ohm",
                "sine 1000 Hz",
                "power-at-end-point",
                OptionalDouble.of(80 + sequence % 100),
                OptionalDouble.of(0.5),
                OptionalDouble.of(0.01),
                Optional.of(EndPointOutcome.REACHED),
                EntryState.VALID,
                sequence % 50 == 0,
                "");
    }

    @Override
    public List<LogEntry> entries(List<IndexedEntry> found) {
        return List.of();
    }

    @Override
    public List<String> distinct(IndexColumn column) {
        return List.of();
    }

    @Override
    public void close() {
        indexed = 0;
    }
}
