// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.testlog.ui.internal.LogArrangement.Order;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.table.CellHover;
import org.ohmstead.workbench.table.CopiedTable;

/** The table of the entries. Rows become widgets only when they scroll into sight. */
final class LogTable {
    private static final int CELL_PADDING = 18;
    private static final int ICON_WIDTH = 20;
    private static final int WIDEST = 320;
    private static final int MEASURED_ROWS = 200;

    private final Table table;
    private final StateIcons icons;
    private final Consumer<Optional<LogRow>> chosen;
    private final Consumer<LogColumn> headerClicked;
    private LogArrangement arrangement = LogArrangement.NOTHING;
    private boolean sized;

    LogTable(Composite parent, Consumer<Optional<LogRow>> chosen, Consumer<LogColumn> headerClicked) {
        this.chosen = chosen;
        this.headerClicked = headerClicked;
        table = Ids.name(new Table(parent, SWT.VIRTUAL | SWT.MULTI | SWT.FULL_SELECTION | SWT.BORDER), "log.table");
        table.setHeaderVisible(true);
        icons = new StateIcons(table);
        table.addListener(SWT.SetData, this::fill);
        table.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> chosen.accept(focused())));
        table.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.stateMask == SWT.MOD1 && event.keyCode == 'c') {
                copy();
            } else if (event.stateMask == SWT.MOD1 && event.keyCode == 'a') {
                table.selectAll();
            }
        }));
        new CellHover(table, this::hover);
    }

    Table control() {
        return table;
    }

    /** Makes so many columns more, or those that are left; rows can be shown when all of them are there. */
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

    /** Writes the headers as uncertainties are shown now. */
    void showHeaders() {
        for (LogColumn column : LogColumn.values()) {
            showHeader(column);
        }
    }

    private void showHeader(LogColumn column) {
        TableColumn header = table.getColumn(column.ordinal());
        header.setText(column.header());
        header.setToolTipText(column.hint() + " Click to sort.");
    }

    void show(LogArrangement wanted, Order order) {
        boolean grew = wanted.shown().size() > arrangement.shown().size()
                && !arrangement.shown().isEmpty();
        boolean follow = grew && order.equals(Order.OF_THE_LOG) && atEnd() && table.getSelectionCount() == 0;
        arrangement = wanted;
        table.setRedraw(false);
        try {
            table.setItemCount(wanted.shown().size());
            table.clearAll();
            table.setSortColumn(table.getColumn(order.column().ordinal()));
            table.setSortDirection(order.falling() ? SWT.DOWN : SWT.UP);
            size();
        } finally {
            table.setRedraw(true);
        }
        if (follow) {
            table.showItem(table.getItem(table.getItemCount() - 1));
        }
    }

    private boolean atEnd() {
        return table.getVerticalBar() != null
                && table.getVerticalBar().getSelection()
                                + table.getVerticalBar().getThumb()
                        >= table.getVerticalBar().getMaximum();
    }

    private void fill(Event event) {
        int index = event.index;
        TableItem item = (TableItem) event.item;
        if (index >= arrangement.shown().size()) {
            return;
        }
        LogRow row = arrangement.shown().get(index);
        item.setText(row.cells().toArray(new String[0]));
        item.setImage(LogColumn.STATE.ordinal(), icons.of(row.state()));
        Tones tones = Tones.of(table);
        item.setForeground(
                switch (row.state()) {
                    case VALID -> null;
                    case UNREADABLE -> tones.error();
                    case VOIDED, NOTE, VOIDING -> tones.mutedText();
                });
    }

    /** Columns get the width of what stands in them, once there is something; after that they are the user's. */
    private void size() {
        if (sized || arrangement.shown().isEmpty()) {
            return;
        }
        sized = true;
        List<LogRow> measured = arrangement
                .shown()
                .subList(0, Math.min(MEASURED_ROWS, arrangement.shown().size()));
        GC gc = new GC(table);
        try {
            gc.setFont(table.getFont());
            for (LogColumn column : LogColumn.values()) {
                int width = gc.stringExtent(column.header()).x + CELL_PADDING;
                for (LogRow row : measured) {
                    width = Math.max(width, gc.stringExtent(row.cell(column)).x);
                }
                int icon = column == LogColumn.STATE ? ICON_WIDTH : 0;
                table.getColumn(column.ordinal()).setWidth(Math.min(WIDEST, width + icon + CELL_PADDING));
            }
        } finally {
            gc.dispose();
        }
    }

    /** Returns the row that was selected last of all, or nothing. */
    private Optional<LogRow> focused() {
        int[] selected = table.getSelectionIndices();
        if (selected.length == 0) {
            return Optional.empty();
        }
        int focus = table.getSelectionIndex();
        boolean among = Arrays.stream(selected).anyMatch(index -> index == focus);
        return Optional.of(arrangement.shown().get(among ? focus : selected[0]));
    }

    /** Returns the selected rows from top to bottom. */
    List<LogRow> selected() {
        List<LogRow> rows = new ArrayList<>();
        int[] indexes = table.getSelectionIndices();
        Arrays.sort(indexes);
        for (int index : indexes) {
            if (index < arrangement.shown().size()) {
                rows.add(arrangement.shown().get(index));
            }
        }
        return rows;
    }

    /**
     * Selects the row of an entry, unless it is among those selected already, and scrolls to it.
     *
     * @return whether the filter shows it
     */
    boolean reveal(String entryId) {
        int index = arrangement.indexOf(entryId);
        if (index < 0) {
            table.deselectAll();
            return false;
        }
        if (!table.isSelected(index)) {
            table.setSelection(index);
        }
        table.showSelection();
        return true;
    }

    void selectNothing() {
        table.deselectAll();
    }

    /** Selects the first row as if the user had done so. */
    void enter() {
        if (table.getItemCount() > 0) {
            table.setFocus();
            if (table.getSelectionCount() == 0) {
                table.setSelection(0);
                chosen.accept(focused());
            }
        }
    }

    /** Puts the selected rows on the clipboard, tabs between the columns. */
    void copy() {
        List<LogRow> rows = selected();
        if (rows.isEmpty()) {
            return;
        }
        CopiedTable.toClipboard(table.getDisplay(), TabText.of(rows));
    }

    private String hover(int index, int column) {
        return index < arrangement.shown().size()
                ? arrangement.shown().get(index).hover(LogColumn.values()[column])
                : "";
    }
}
