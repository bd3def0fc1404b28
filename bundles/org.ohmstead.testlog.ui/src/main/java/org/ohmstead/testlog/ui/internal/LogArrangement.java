// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ohmstead.workbench.session.WorkProgress;

/**
 * The rows that are shown, in the order in which they are shown.
 *
 * @param all every row of the log, in its order
 * @param shown those that the filter wants, sorted
 */
record LogArrangement(List<LogRow> all, List<LogRow> shown) {
    static final LogArrangement NOTHING = new LogArrangement(List.of(), List.of());

    private static final int BETWEEN_LOOKS = 4096;

    /** Which column sorts the rows, and whether the largest comes first. */
    record Order(LogColumn column, boolean falling) {
        static final Order OF_THE_LOG = new Order(LogColumn.NUMBER, false);

        /** Returns the order after a click on a column's header: the other way round, or rising by another column. */
        Order clicked(LogColumn header) {
            return new Order(header, header == column && !falling);
        }
    }

    LogArrangement {
        all = List.copyOf(all);
        shown = List.copyOf(shown);
    }

    /** Filters and sorts; may run for long and gives up when the progress says so. */
    static LogArrangement of(List<LogRow> all, LogFilter filter, Order order, WorkProgress progress) {
        List<LogRow> wanted = new ArrayList<>();
        for (int index = 0; index < all.size(); index++) {
            if (index % BETWEEN_LOOKS == 0) {
                progress.stopIfCancelled();
            }
            if (filter.matches(all.get(index))) {
                wanted.add(all.get(index));
            }
        }
        if (!order.equals(Order.OF_THE_LOG)) {
            wanted.sort(order.column().order(order.falling()));
        }
        return new LogArrangement(all, wanted);
    }

    /** Returns the place among the shown rows of the entry with an id, or -1. */
    int indexOf(String entryId) {
        for (int index = 0; index < shown.size(); index++) {
            if (shown.get(index).entry().id().equals(entryId)) {
                return index;
            }
        }
        return -1;
    }

    /** Returns "12 of 28". */
    String count() {
        return String.format(Locale.ROOT, "%d of %d", shown.size(), all.size());
    }
}
