// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.ohmstead.history.internal.EntryOrder;
import org.ohmstead.history.internal.WholeEntries;
import org.ohmstead.history.internal.Words;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.EntryState;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.testlog.search.LogIndex;

/**
 * All that the lab remembers: the logs of several projects, and one that benches share, searched as one. Each source has a search index of
 * its own, which catches up when {@link #refresh} is called. Several threads may use it.
 */
public final class History implements AutoCloseable {
    private final Map<String, HistorySource> sources;
    private final Map<String, LogIndex> indexes;

    private History(Map<String, HistorySource> sources, Map<String, LogIndex> indexes) {
        this.sources = sources;
        this.indexes = indexes;
    }

    /**
     * Opens the indexes of some sources; they know what they knew when they were last refreshed.
     *
     * @param sources at least one, each with a name of its own; they stay open when this is closed
     * @throws TestLogException when an index can neither be opened nor made
     */
    public static History open(List<HistorySource> sources) throws TestLogException {
        Map<String, HistorySource> named = new LinkedHashMap<>();
        for (HistorySource source : sources) {
            if (named.put(source.name(), source) != null) {
                throw new IllegalArgumentException(
                        "sources names \"" + source.name() + "\" twice; each needs a name of its own");
            }
        }
        Map<String, LogIndex> indexes = new LinkedHashMap<>();
        try {
            for (HistorySource source : sources) {
                indexes.put(
                        source.name(),
                        source.indexFile().isPresent()
                                ? LogIndex.open(source.indexFile().get(), source.rows())
                                : LogIndex.inMemory(source.rows()));
            }
        } catch (TestLogException notOpened) {
            indexes.values().forEach(LogIndex::close);
            throw notOpened;
        }
        return new History(named, indexes);
    }

    /** Returns the sources. */
    public List<HistorySource> sources() {
        return List.copyOf(sources.values());
    }

    /**
     * Takes in what was added to the sources since.
     *
     * @param progress is told how far each is, and may stop it
     * @return how many entries were taken in
     * @throws TestLogException when a log cannot be read
     */
    public long refresh(IndexProgress progress) throws TestLogException {
        long taken = 0;
        for (LogIndex index : indexes.values()) {
            taken += index.refresh(progress);
        }
        return taken;
    }

    /**
     * Returns the entries of all sources that meet a query, in one order. In the order of the log, one source comes after the other.
     *
     * @throws TestLogException when an index cannot be used
     */
    public HistoryFound find(Find find, FindOrder order) throws TestLogException {
        List<String> names = new ArrayList<>();
        List<Found> found = new ArrayList<>();
        for (Map.Entry<String, LogIndex> each : indexes.entrySet()) {
            names.add(each.getKey());
            found.add(each.getValue().find(find, order));
        }
        return new HistoryFound(names, found, EntryOrder.of(order));
    }

    /** Returns the different texts of a column over all sources, such as the amplifiers that there are. */
    public List<String> distinct(IndexColumn column) throws TestLogException {
        TreeSet<String> all = new TreeSet<>(String.CASE_INSENSITIVE_ORDER.thenComparing(Comparator.naturalOrder()));
        for (LogIndex index : indexes.values()) {
            all.addAll(index.distinct(column));
        }
        return List.copyOf(all);
    }

    /**
     * Returns the whole entries of a source that meet a query and count, in the order of its log; those of a large log take their time.
     *
     * @param source name of the source
     * @param find which; voided and unreadable ones do not come
     * @throws TestLogException when the log or its index cannot be read
     */
    public List<LogEntry> entries(String source, Find find) throws TestLogException {
        HistorySource from = source(source);
        Found found = indexes.get(source).find(find.withStates(Set.of(EntryState.VALID)), FindOrder.AS_LOGGED);
        return List.copyOf(new WholeEntries(Words.log(source), from.rows()).all(found));
    }

    /** Returns the whole entry of one that was found. */
    public LogEntry entry(HistoryEntry found) throws TestLogException {
        HistorySource from = source(found.source());
        return new WholeEntries(Words.log(found.source()), from.rows())
                .all(new Found() {
                    @Override
                    public int size() {
                        return 1;
                    }

                    @Override
                    public List<IndexedEntry> page(int first, int count) {
                        return List.of(found.entry());
                    }

                    @Override
                    public int indexOf(String entryId) {
                        return found.entry().id().equalsIgnoreCase(entryId) ? 0 : -1;
                    }
                })
                .get(0);
    }

    private HistorySource source(String name) {
        HistorySource found = sources.get(name);
        if (found == null) {
            throw new IllegalArgumentException("source is \"" + name + "\"; it must be one of " + sources.keySet());
        }
        return found;
    }

    /**
     * Returns the specimens whose readings meet a query: each of each source in each of the periods, with names of their own. Of a source
     * without a project only readings count that say which specimen they are about.
     *
     * @param find which readings
     * @param periods in which they were taken; none for all time
     */
    public List<Subject> subjects(Find find, List<Period> periods) throws TestLogException {
        List<Subject> subjects = new ArrayList<>();
        for (HistorySource source : sources.values()) {
            List<LogEntry> entries = entries(source.name(), find.withKinds(Set.of(EntryKind.READING)));
            for (Period period : periods.isEmpty() ? List.of(Period.ALWAYS) : periods) {
                subjects.addAll(
                        source.project().isPresent()
                                ? Subject.of(source.name(), source.project().get(), entries, period)
                                : Subject.of(source.name(), entries, period));
            }
        }
        return Subject.withOwnNames(subjects);
    }

    /** Returns the trends of a figure in each source, see {@link Trend#of}, by the source's name. */
    public Map<String, List<Trend>> trends(String figureId, Find find, Period period, double significance)
            throws TestLogException {
        Map<String, List<Trend>> trends = new LinkedHashMap<>();
        for (String name : sources.keySet()) {
            trends.put(name, Trend.of(entries(name, find), figureId, period, significance));
        }
        return trends;
    }

    /** Closes the indexes. */
    @Override
    public void close() {
        indexes.values().forEach(LogIndex::close);
    }
}
