// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntSupplier;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.units.text.Messages;

/** Gets the rows of the table from the index, in the background; only the newest wish is answered. User interface's thread only. */
final class LogFeed {
    private static final Messages TEXTS = Messages.of(LogFeed.class);

    private final LogSearch search;
    private final IntSupplier topIndex;
    private final Shown shown;
    private Find find = Find.EVERYTHING;
    private FindOrder order = FindOrder.AS_LOGGED;
    private LogRows rows = LogRows.NONE;
    private long newest;
    private boolean finding;
    private boolean outdated;
    private boolean reading;

    /** What is done with the answers. */
    interface Shown {
        /** Other rows were found. */
        void rows(LogRows rows);

        /** A page of those that were found last has come. */
        void page(int from, int count);

        /** Something could not be read. */
        void failed(Exception why);
    }

    /**
     * Makes a feed.
     *
     * @param topIndex tells which row is at the top, so that rows around it come with the first answer
     */
    LogFeed(LogSearch search, IntSupplier topIndex, Shown shown) {
        this.search = search;
        this.topIndex = topIndex;
        this.shown = shown;
    }

    Find find() {
        return find;
    }

    FindOrder order() {
        return order;
    }

    private static String title() {
        return TEXTS.text("row.finding");
    }

    /** Wants other entries. */
    void find(Find wanted) {
        if (!wanted.equals(find)) {
            find = wanted;
            answer();
        }
    }

    /** Wants another order: the other way round, or rising by another column. */
    void clicked(IndexColumn column) {
        order = new FindOrder(column, column == order.column() && !order.falling());
        answer();
    }

    /** Wants the same again, since the log or how numbers are shown has changed; one answer serves all wishes that come meanwhile. */
    void again() {
        if (finding) {
            outdated = true;
        } else {
            answer();
        }
    }

    /** Turns to another log, or to none. */
    void turn() {
        rows = LogRows.NONE;
        reading = false;
        answer();
    }

    private void answer() {
        newest++;
        finding = true;
        outdated = false;
        long mine = newest;
        Find wantedFind = find;
        FindOrder wantedOrder = order;
        int page = Math.max(0, topIndex.getAsInt()) / LogRows.PAGE;
        search.ask(
                title(),
                finder -> rows(finder, wantedFind, wantedOrder, page),
                answer -> end(mine, () -> {
                    rows = answer.orElse(LogRows.NONE);
                    shown.rows(rows);
                    readWanted();
                }),
                why -> end(mine, () -> shown.failed(why)));
    }

    private void end(long number, Runnable action) {
        if (number == newest) {
            finding = false;
            action.run();
            if (outdated) {
                answer();
            }
        }
    }

    private static LogRows rows(EntryFinder finder, Find find, FindOrder order, int page) throws TestLogException {
        Found found = finder.find(find, order);
        Map<Integer, List<LogRow>> pages = new HashMap<>();
        int last = Math.max(0, found.size() - 1) / LogRows.PAGE;
        int first = Math.min(page, last);
        for (int number = first; number <= Math.min(first + 1, last); number++) {
            pages.put(number, LogRows.read(finder, found, number));
        }
        return new LogRows(found, find, order, finder.state().indexed(), pages);
    }

    /** Reads the pages that are wanted, the newest wish first. */
    void readWanted() {
        if (reading) {
            return;
        }
        LogRows from = rows;
        Optional<Integer> page = from.nextWanted();
        if (page.isEmpty()) {
            return;
        }
        reading = true;
        search.ask(
                title(),
                finder -> LogRows.read(finder, from.found(), page.get()),
                answer -> {
                    reading = false;
                    answer.ifPresent(read -> take(from, page.get(), read));
                    readWanted();
                },
                why -> {
                    reading = false;
                    shown.failed(why);
                });
    }

    private void take(LogRows from, int page, List<LogRow> read) {
        from.put(page, read);
        if (from == rows) {
            shown.page(page * LogRows.PAGE, read.size());
        }
    }

    /** Finds the place of an entry among the rows that are shown, or -1; not told once there are others. */
    void place(String entryId, Consumer<Integer> told) {
        LogRows from = rows;
        search.ask(
                title(),
                finder -> from.found().indexOf(entryId),
                answer -> {
                    if (from == rows) {
                        told.accept(answer.orElse(-1));
                    }
                },
                shown::failed);
    }
}
