// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.ui.internal.LogArrangement.Order;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/**
 * Turns entries into filtered, sorted rows. A short log is done at once; a long one in the background, and only the newest wish is
 * answered.
 */
final class RowFeed {
    /** So many rows are filtered and sorted in a few milliseconds. */
    static final int AT_ONCE = 2000;

    private static final WorkProgress SILENT = new WorkProgress() {
        @Override
        public void step(int done, int total, String what) {
            // Too short to tell of.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    private final BackgroundWork work;
    private final Consumer<LogArrangement> shown;
    private final Consumer<Exception> failed;
    private List<LogEntry> entries = List.of();
    private List<LogRow> rows = List.of();
    private boolean rowsFit = true;
    private LogFilter filter = LogFilter.EVERYTHING;
    private Order order = Order.OF_THE_LOG;
    private long newest;

    RowFeed(BackgroundWork work, Consumer<LogArrangement> shown, Consumer<Exception> failed) {
        this.work = work;
        this.shown = shown;
        this.failed = failed;
    }

    void entries(List<LogEntry> wanted) {
        entries = wanted;
        rowsFit = false;
        answer();
    }

    /** Makes the texts of all rows anew. */
    void again() {
        rows = List.of();
        rowsFit = false;
        answer();
    }

    void filter(LogFilter wanted) {
        filter = wanted;
        answer();
    }

    void order(Order wanted) {
        order = wanted;
        answer();
    }

    LogFilter filter() {
        return filter;
    }

    Order order() {
        return order;
    }

    private void answer() {
        newest++;
        List<LogEntry> from = entries;
        List<LogRow> before = rows;
        boolean fit = rowsFit;
        LogFilter wantedFilter = filter;
        Order wantedOrder = order;
        if (from.size() <= AT_ONCE) {
            accept(arrange(from, before, fit, wantedFilter, wantedOrder, SILENT));
            return;
        }
        long mine = newest;
        work.start(
                "Sorting the test log",
                progress -> arrange(from, before, fit, wantedFilter, wantedOrder, progress),
                arrangement -> {
                    if (mine == newest) {
                        accept(arrangement);
                    }
                },
                failed);
    }

    private void accept(LogArrangement arrangement) {
        rows = arrangement.all();
        rowsFit = true;
        shown.accept(arrangement);
    }

    private static LogArrangement arrange(
            List<LogEntry> entries,
            List<LogRow> before,
            boolean fit,
            LogFilter filter,
            Order order,
            WorkProgress progress) {
        List<LogRow> rows = fit ? before : rows(entries, before, progress);
        return LogArrangement.of(rows, filter, order, progress);
    }

    /** Rows of entries that are as they were are taken over. */
    private static List<LogRow> rows(List<LogEntry> entries, List<LogRow> before, WorkProgress progress) {
        Map<String, LogRow> known = new HashMap<>();
        before.forEach(row -> known.put(row.entry().hash(), row));
        return entries.stream()
                .map(entry -> {
                    progress.stopIfCancelled();
                    LogRow row = known.get(entry.hash());
                    return row != null && row.entry().equals(entry) ? row : LogRow.of(entry);
                })
                .toList();
    }
}
