// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** The rows that are selected in the table, also those that are not there yet, and what may be done with them. */
final class SelectedRows {
    private static final Messages TEXTS = Messages.of(SelectedRows.class);

    /** So many rows are copied at once, at most. */
    static final int MOST_COPIED = 20_000;

    /** So many entries are voided at once, at most. */
    static final int MOST_VOIDED = 200;

    private final ProjectDesk desk;
    private final LogSearch search;
    private final LogTable table;
    private LogRows rows = LogRows.NONE;

    SelectedRows(ProjectDesk desk, LogSearch search, LogTable table) {
        this.desk = desk;
        this.search = search;
        this.table = table;
    }

    /** Says which rows the table shows. */
    void among(LogRows wanted) {
        rows = wanted;
    }

    /** Returns the selected rows that are there, at most so many. */
    private List<LogRow> known(int most) {
        return Arrays.stream(table.selected(most))
                .mapToObj(rows::known)
                .flatMap(Optional::stream)
                .toList();
    }

    /** Hands the selected rows over, reading those that are not there. */
    void with(int most, Consumer<List<LogRow>> done, Consumer<Exception> failed) {
        int[] places = table.selected(most);
        List<LogRow> there = known(most);
        if (there.size() == places.length) {
            done.accept(there);
            return;
        }
        LogRows from = rows;
        search.ask(
                TEXTS.text("selected.reading"),
                finder -> from.read(finder, places),
                read -> done.accept(read.orElse(List.of())),
                failed);
    }

    /** Returns both selected readings when two are selected; else nothing. */
    List<LogRow> pair() {
        List<LogRow> two = table.selectedCount() == 2 ? known(2) : List.of();
        return two.size() == 2 && two.stream().allMatch(LogRow::reading) ? two : List.of();
    }

    /** Returns why nothing that is selected can be voided; empty when something can. */
    String whyNotVoid() {
        if (desk.session().map(ProjectSession::readOnly).orElse(true)) {
            return TEXTS.text("selected.readOnly");
        }
        if (desk.log().state() == LogState.BROKEN) {
            return TEXTS.text("selected.broken");
        }
        if (table.selectedCount() == 0) {
            return TEXTS.text("selected.none");
        }
        if (table.selectedCount() > MOST_VOIDED) {
            return TEXTS.text("selected.many", Integer.toString(MOST_VOIDED));
        }
        return known(MOST_VOIDED).stream().noneMatch(LogRow::voidable) ? TEXTS.text("selected.notVoidable") : "";
    }
}
