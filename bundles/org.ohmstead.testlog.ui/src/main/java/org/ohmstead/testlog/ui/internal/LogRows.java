// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.units.text.Messages;

/**
 * The rows that were found. They are read a page at a time, in the background, when they are wanted; a few pages are kept. User
 * interface's thread only.
 */
final class LogRows {
    private static final Messages TEXTS = Messages.of(LogRows.class);

    /** Rows in a page. */
    static final int PAGE = 128;

    /** Pages that are kept. */
    static final int KEPT = 48;

    /** Pages that may wait to be read; when more are wanted, those that were wanted longest ago are not. */
    private static final int WAITING = 4;

    static final LogRows NONE = new LogRows(new Nothing(), Find.EVERYTHING, FindOrder.AS_LOGGED, 0, Map.of());

    private final Found found;
    private final Find find;
    private final FindOrder order;
    private final long total;
    private final List<Integer> wanted = new ArrayList<>();
    private final Map<Integer, List<LogRow>> pages = new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, List<LogRow>> eldest) {
            return size() > KEPT;
        }
    };

    /** Nothing was found. */
    private record Nothing() implements Found {
        @Override
        public int size() {
            return 0;
        }

        @Override
        public List<IndexedEntry> page(int from, int count) {
            return List.of();
        }

        @Override
        public int indexOf(String entryId) {
            return -1;
        }
    }

    /**
     * Makes the rows of what was found.
     *
     * @param total entries of the whole log
     * @param read pages that were read already, by their numbers
     */
    LogRows(Found found, Find find, FindOrder order, long total, Map<Integer, List<LogRow>> read) {
        this.found = found;
        this.find = find;
        this.order = order;
        this.total = total;
        pages.putAll(read);
    }

    /** Reads a page; in the background. */
    static List<LogRow> read(EntryFinder finder, Found found, int page) throws TestLogException {
        List<IndexedEntry> light = found.page(page * PAGE, PAGE);
        Map<String, LogEntry> full = new HashMap<>();
        finder.entries(light).forEach(entry -> full.put(entry.id(), entry));
        return light.stream()
                .map(entry -> LogRow.of(entry, Optional.ofNullable(full.get(entry.id()))))
                .toList();
    }

    /** Reads some rows, wherever they stand; in the background. */
    List<LogRow> read(EntryFinder finder, int[] places) throws TestLogException {
        Map<Integer, List<LogRow>> read = new HashMap<>();
        List<LogRow> some = new ArrayList<>();
        for (int place : places) {
            Integer number = place / PAGE;
            if (!read.containsKey(number)) {
                read.put(number, read(finder, found, number));
            }
            List<LogRow> page = read.get(number);
            if (place % PAGE < page.size()) {
                some.add(page.get(place % PAGE));
            }
        }
        return some;
    }

    /** Returns the place of an entry when it is among the rows that are there. */
    Optional<Integer> place(String entryId) {
        for (Map.Entry<Integer, List<LogRow>> page : pages.entrySet()) {
            for (int index = 0; index < page.getValue().size(); index++) {
                if (page.getValue().get(index).id().equals(entryId)) {
                    return Optional.of(page.getKey() * PAGE + index);
                }
            }
        }
        return Optional.empty();
    }

    Found found() {
        return found;
    }

    Find find() {
        return find;
    }

    FindOrder order() {
        return order;
    }

    int size() {
        return found.size();
    }

    long total() {
        return total;
    }

    /** Returns a row when its page is there; else notes that it is wanted. */
    Optional<LogRow> row(int index) {
        List<LogRow> page = pages.get(index / PAGE);
        if (page == null) {
            Integer number = index / PAGE;
            wanted.remove(number);
            wanted.add(number);
            if (wanted.size() > WAITING) {
                wanted.remove(0);
            }
            return Optional.empty();
        }
        int place = index % PAGE;
        return place < page.size() ? Optional.of(page.get(place)) : Optional.empty();
    }

    /** Returns a row when its page is there, without wanting it. */
    Optional<LogRow> known(int index) {
        return pages.containsKey(index / PAGE) ? row(index) : Optional.empty();
    }

    /** Returns the page that was wanted last and is not there, taking it off the list; empty when none is. */
    Optional<Integer> nextWanted() {
        return wanted.isEmpty() ? Optional.empty() : Optional.of(wanted.remove(wanted.size() - 1));
    }

    void put(int page, List<LogRow> rows) {
        pages.put(page, rows);
    }

    /** Returns "12 of 28". */
    String count() {
        return TEXTS.text("row.count", Integer.toString(size()), Long.toString(total));
    }
}
