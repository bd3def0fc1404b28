// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.table.CopiedTable;

/** What comes of the user's choices in the table: the desk's chosen entry, a pair to compare, another order, a copy. */
final class LogDeeds implements LogTable.Heard {
    private final ProjectDesk desk;
    private final LogFeed feed;
    private final Consumer<Exception> failed;
    private final Runnable changed;
    private final LogTable table;
    private final SelectedRows selected;

    /**
     * Makes the table of a view.
     *
     * @param failed hears why something could not be read
     * @param changed runs when other rows are selected
     */
    LogDeeds(
            Composite parent,
            ProjectDesk desk,
            LogSearch search,
            LogFeed feed,
            Consumer<Exception> failed,
            Runnable changed) {
        this.desk = desk;
        this.feed = feed;
        this.failed = failed;
        this.changed = changed;
        this.table = new LogTable(parent, this);
        this.selected = new SelectedRows(desk, search, table);
    }

    LogTable table() {
        return table;
    }

    SelectedRows selected() {
        return selected;
    }

    @Override
    public void chosen(Optional<LogRow> row) {
        row.ifPresentOrElse(
                each -> desk.findEntry(each.id(), found -> choose(each.id(), found), failed),
                () -> desk.choose(Optional.empty()));
        choosePair();
        changed.run();
    }

    /** Another row may have been chosen while the entry was read. */
    private void choose(String entryId, Optional<LogEntry> entry) {
        if (!table.control().isDisposed()
                && table.focused().filter(row -> row.id().equals(entryId)).isPresent()) {
            desk.choose(entry);
        }
    }

    /** Tells the view of two readings when two are selected; returns whether they are. */
    boolean choosePair() {
        List<LogRow> pair = selected.pair();
        if (!pair.isEmpty()) {
            PairChoice.of(desk).choose(pair.get(0).id(), pair.get(1).id());
        }
        return !pair.isEmpty();
    }

    @Override
    public void header(LogColumn column) {
        column.sortedBy().ifPresent(feed::clicked);
    }

    @Override
    public void wanted() {
        feed.readWanted();
    }

    @Override
    public void copy() {
        selected.with(SelectedRows.MOST_COPIED, this::copied, failed);
    }

    private void copied(List<LogRow> some) {
        if (!table.control().isDisposed() && !some.isEmpty()) {
            CopiedTable.toClipboard(table.control().getDisplay(), TabText.of(some));
        }
    }

    @Override
    public String hover(LogRow row, LogColumn column) {
        return row.hover(column, desk.log().entry(row.id()));
    }
}
