// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Tones;

/** The columns of the log's table and what stands in them. */
final class LogCells {
    private static final Messages TEXTS = Messages.of(LogCells.class);
    private static final int CELL_PADDING = 11;
    private static final int ICON_WIDTH = 20;
    private static final int WIDEST = 320;
    /** Room for the sign of the order in the header of the column that orders at first. */
    private static final int ARROW_WIDTH = 14;
    /** Headers are bold, which is wider than what is measured in the table's own font. */
    private static final double BOLD = 1.12;

    private static final String PLACEHOLDER = "\u2026";

    private final Table table;
    private final StateIcons icons;
    private final Consumer<LogColumn> headerClicked;
    private boolean sized;

    LogCells(Table table, Consumer<LogColumn> headerClicked) {
        this.table = table;
        this.headerClicked = headerClicked;
        this.icons = new StateIcons(table);
    }

    /** Makes so many columns more, or those that are left. */
    void addColumns(int most) {
        LogColumn[] all = LogColumn.values();
        int end = Math.min(all.length, table.getColumnCount() + most);
        while (table.getColumnCount() < end) {
            LogColumn column = all[table.getColumnCount()];
            TableColumn header = new TableColumn(table, column.numeric() ? SWT.RIGHT : SWT.LEFT);
            header.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> headerClicked.accept(column)));
            showHeader(column);
        }
    }

    /** Returns whether all columns are there. */
    boolean complete() {
        return table.getColumnCount() == LogColumn.values().length;
    }

    /** Writes the headers as uncertainties are shown now. */
    void showHeaders() {
        for (LogColumn column : LogColumn.values()) {
            showHeader(column);
        }
    }

    private void showHeader(LogColumn column) {
        TableColumn header = table.getColumn(column.ordinal());
        header.setText(column.header());
        header.setToolTipText(
                column.sortedBy().isPresent() ? TEXTS.text("column.hint.sorts", column.hint()) : column.hint());
    }

    void showOrder(FindOrder order) {
        Arrays.stream(LogColumn.values())
                .filter(column ->
                        column.sortedBy().filter(order.column()::equals).isPresent())
                .findFirst()
                .ifPresent(column -> table.setSortColumn(table.getColumn(column.ordinal())));
        table.setSortDirection(order.falling() ? SWT.DOWN : SWT.UP);
    }

    /** Writes a row, or that it is still to come. */
    void fill(TableItem item, Optional<LogRow> row) {
        Tones tones = Tones.of(table);
        if (row.isEmpty()) {
            item.setText(LogColumn.NUMBER.ordinal(), PLACEHOLDER);
            item.setForeground(tones.mutedText());
            return;
        }
        item.setText(row.get().cells().toArray(new String[0]));
        item.setImage(LogColumn.STATE.ordinal(), icons.of(row.get().state()));
        boolean overdue = row.get().entry().overdue();
        item.setImage(LogColumn.INSTRUMENTS.ordinal(), overdue ? icons.ofOverdue() : null);
        item.setForeground(
                switch (row.get().state()) {
                    case VALID -> null;
                    case UNREADABLE -> tones.error();
                    case VOIDED, NOTE, VOIDING, JOINING, ARCHIVING -> tones.mutedText();
                });
        item.setForeground(LogColumn.INSTRUMENTS.ordinal(), overdue ? tones.warning() : null);
    }

    /** Gives columns the width of what stands in them, once there is something; after that they are the user's. */
    void size(LogRows rows) {
        if (sized) {
            return;
        }
        List<LogRow> measured = new ArrayList<>();
        for (int index = 0; index < Math.min(LogRows.PAGE, rows.size()); index++) {
            rows.known(index).ifPresent(measured::add);
        }
        if (measured.isEmpty()) {
            return;
        }
        sized = true;
        GC gc = new GC(table);
        try {
            gc.setFont(table.getFont());
            for (LogColumn column : LogColumn.values()) {
                table.getColumn(column.ordinal()).setWidth(width(gc, column, measured));
            }
        } finally {
            gc.dispose();
        }
    }

    private static int width(GC gc, LogColumn column, List<LogRow> measured) {
        int arrow = column == LogColumn.NUMBER ? ARROW_WIDTH : 0;
        int width = (int) (BOLD * gc.stringExtent(column.header()).x) + arrow;
        for (String text :
                measured.stream().map(row -> row.cell(column)).distinct().toList()) {
            width = Math.max(width, gc.stringExtent(text).x);
        }
        int icon = column == LogColumn.STATE ? ICON_WIDTH : 0;
        return Math.min(WIDEST, width + icon + CELL_PADDING);
    }
}
