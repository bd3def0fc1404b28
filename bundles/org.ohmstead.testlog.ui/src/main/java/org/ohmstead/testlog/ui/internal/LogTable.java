// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Arrays;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.KeyEvent;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionEvent;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Slider;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.table.CellHover;

/**
 * The table of the entries. Of a short list all rows are in the table; of a long one only those in sight, with a scroll bar of its own
 * beside it, because the toolkit's tables take seconds for a million rows.
 */
final class LogTable {
    /** Longer lists are shown a window at a time. */
    static final int WHOLE = 400;

    private static final int WHEEL_ROWS = 3;

    private final Composite room;
    private final Table table;
    private final Slider slider;
    private final LogCells cells;
    private final Heard heard;
    private final RowSelection selection = new RowSelection();
    private LogRows rows = LogRows.NONE;
    private int top;

    /** What the table tells. */
    interface Heard {
        /** The user selected rows; told the row that was selected last of all, when it is known. */
        void chosen(Optional<LogRow> row);

        /** The user clicked a header. */
        void header(LogColumn column);

        /** Rows are wanted that are not there yet. */
        void wanted();

        /** The user wants the selected rows on the clipboard. */
        void copy();

        /** Returns what more to say of a cell. */
        String hover(LogRow row, LogColumn column);
    }

    LogTable(Composite parent, Heard heard) {
        this.heard = heard;
        room = new Composite(parent, SWT.NONE);
        GridLayout grid = new GridLayout(2, false);
        grid.marginWidth = 0;
        grid.marginHeight = 0;
        grid.horizontalSpacing = 0;
        room.setLayout(grid);
        table = Ids.name(new Table(room, SWT.VIRTUAL | SWT.MULTI | SWT.FULL_SELECTION | SWT.BORDER), "log.table");
        table.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        table.setHeaderVisible(true);
        slider = Ids.name(new Slider(room, SWT.VERTICAL), "log.scroll");
        slider.setLayoutData(new GridData(SWT.FILL, SWT.FILL, false, true));
        ((GridData) slider.getLayoutData()).exclude = true;
        slider.setVisible(false);
        slider.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> scrollTo(slider.getSelection())));
        cells = new LogCells(table, heard::header);
        table.addListener(SWT.SetData, this::fill);
        table.addListener(SWT.Resize, event -> fit());
        table.addListener(SWT.MouseVerticalWheel, this::wheel);
        table.addSelectionListener(SelectionListener.widgetSelectedAdapter(this::selected));
        table.addKeyListener(KeyListener.keyPressedAdapter(this::key));
        new CellHover(table, this::hover);
    }

    Table control() {
        return table;
    }

    /** Returns its columns. */
    LogCells cells() {
        return cells;
    }

    /** Returns what stands in the view: the table with its scroll bar. */
    Composite room() {
        return room;
    }

    /** Returns the row at the top. */
    int topIndex() {
        return whole() ? table.getTopIndex() : top;
    }

    private boolean whole() {
        return rows.size() <= WHOLE;
    }

    /** How many rows the table has: all, or as many as have room. */
    private int capacity() {
        if (whole()) {
            return rows.size();
        }
        int height = table.getClientArea().height - table.getHeaderHeight();
        return Math.max(1, Math.min(rows.size(), height / Math.max(1, table.getItemHeight())));
    }

    void show(LogRows wanted) {
        boolean same = wanted.find().equals(rows.find()) && wanted.order().equals(rows.order());
        boolean grew = same && wanted.size() > rows.size() && rows.size() > 0;
        boolean follow = grew && wanted.order().equals(FindOrder.AS_LOGGED) && atEnd() && selection.count() == 0;
        rows = wanted;
        if (same) {
            selection.cut(wanted.size());
        } else {
            selection.clear();
            top = 0;
        }
        table.setRedraw(false);
        try {
            cells.showOrder(wanted.order());
            fit();
            cells.size(rows);
        } finally {
            table.setRedraw(true);
        }
        if (follow) {
            showRow(rows.size() - 1);
        }
    }

    /** Gives the table as many rows as it can hold, and writes all of them anew. */
    private void fit() {
        if (!cells.complete()) {
            return;
        }
        int capacity = capacity();
        if (slider.getVisible() == whole()) {
            slider.setVisible(!whole());
            ((GridData) slider.getLayoutData()).exclude = whole();
            room.layout();
            capacity = capacity();
        }
        top = whole() ? 0 : Math.max(0, Math.min(top, rows.size() - capacity));
        if (!whole()) {
            slider.setValues(top, 0, rows.size(), capacity, 1, capacity);
        }
        if (table.getItemCount() != capacity) {
            table.setItemCount(capacity);
        }
        refresh();
    }

    private void refresh() {
        table.clearAll();
        showSelection();
        if (!whole()) {
            // Before they are painted, so that they are there the sooner.
            rows.row(top + table.getItemCount() - 1);
            rows.row(top);
        }
        heard.wanted();
    }

    private void showSelection() {
        int[] wanted = selection.inSight(top, table.getItemCount());
        if (!Arrays.equals(wanted, sorted(table.getSelectionIndices()))) {
            table.deselectAll();
            table.select(wanted);
        }
    }

    private static int[] sorted(int[] indexes) {
        Arrays.sort(indexes);
        return indexes;
    }

    /** A page of rows has come. */
    void arrived(int from, int count) {
        int first = Math.max(from - top, 0);
        int last = Math.min(from + count - top, table.getItemCount()) - 1;
        if (first <= last) {
            table.clear(first, last);
        }
        cells.size(rows);
    }

    private boolean atEnd() {
        if (!whole()) {
            return top >= rows.size() - table.getItemCount();
        }
        return table.getVerticalBar() != null
                && table.getVerticalBar().getSelection()
                                + table.getVerticalBar().getThumb()
                        >= table.getVerticalBar().getMaximum();
    }

    private void fill(Event event) {
        TableItem item = (TableItem) event.item;
        int index = top + event.index;
        if (index >= rows.size()) {
            return;
        }
        Optional<LogRow> row = rows.row(index);
        cells.fill(item, row);
        if (row.isEmpty()) {
            heard.wanted();
        }
    }

    private void selected(SelectionEvent event) {
        boolean extend = !whole() && (event.stateMask & SWT.SHIFT) != 0;
        if (extend && table.getSelectionIndex() >= 0) {
            selection.extendTo(top + table.getSelectionIndex());
        } else {
            takeSelection(!whole() && (event.stateMask & SWT.MOD1) != 0);
        }
        tellChosen();
    }

    private void takeSelection(boolean keepOthers) {
        selection.take(top, table.getItemCount(), table.getSelectionIndices(), table.getSelectionIndex(), keepOthers);
    }

    private void tellChosen() {
        heard.chosen(selection.focus() < 0 ? Optional.empty() : rows.row(selection.focus()));
    }

    private void wheel(Event event) {
        if (!whole()) {
            event.doit = false;
            scrollTo(top - Integer.signum(event.count) * WHEEL_ROWS);
        }
    }

    private void key(KeyEvent event) {
        if (whole()) {
            takeSelection(false);
        }
        if (event.stateMask == SWT.MOD1 && event.keyCode == 'c') {
            heard.copy();
        } else if (event.stateMask == SWT.MOD1 && event.keyCode == 'a') {
            selection.all(rows.size());
            showSelection();
            tellChosen();
        } else if (!whole()) {
            move(event);
        }
    }

    /** Moves the selection of a long list, of which the table has only a window. */
    private void move(KeyEvent event) {
        int page = Math.max(1, table.getItemCount() - 1);
        int from = Math.max(0, selection.focus());
        int wanted =
                switch (event.keyCode) {
                    case SWT.ARROW_UP -> from - 1;
                    case SWT.ARROW_DOWN -> selection.focus() < 0 ? 0 : from + 1;
                    case SWT.PAGE_UP -> from - page;
                    case SWT.PAGE_DOWN -> from + page;
                    case SWT.HOME -> 0;
                    case SWT.END -> rows.size() - 1;
                    default -> -2;
                };
        if (wanted == -2) {
            return;
        }
        event.doit = false;
        int index = Math.max(0, Math.min(rows.size() - 1, wanted));
        if ((event.stateMask & SWT.SHIFT) != 0) {
            selection.extendTo(index);
        } else {
            selection.only(index);
        }
        showRow(index);
        showSelection();
        tellChosen();
    }

    /** Shows other rows of a long list. */
    private void scrollTo(int newTop) {
        int wanted = Math.max(0, Math.min(newTop, rows.size() - table.getItemCount()));
        if (wanted != top) {
            top = wanted;
            slider.setSelection(top);
            refresh();
        }
    }

    private void showRow(int index) {
        if (whole()) {
            table.showItem(table.getItem(index));
        } else if (index < top) {
            scrollTo(index);
        } else if (index >= top + table.getItemCount()) {
            scrollTo(index - table.getItemCount() + 1);
        }
    }

    /** Returns the places of the selected rows, at most so many. */
    int[] selected(int most) {
        return selection.rows(most);
    }

    /** Returns the row that was selected last of all, when it is there. */
    Optional<LogRow> focused() {
        return selection.focus() < 0 ? Optional.empty() : rows.known(selection.focus());
    }

    int selectedCount() {
        return selection.count();
    }

    /** Selects a row, unless it is among those selected already, and scrolls to it; a negative one selects nothing. */
    void reveal(int index) {
        if (index < 0 || index >= rows.size()) {
            selection.clear();
            showSelection();
            return;
        }
        if (!selection.has(index)) {
            selection.only(index);
        }
        showRow(index);
        showSelection();
    }

    /** Selects the first row as if the user had done so. */
    void enter() {
        if (table.getItemCount() > 0) {
            table.setFocus();
            if (selection.count() == 0) {
                selection.only(top);
                showSelection();
                tellChosen();
            }
        }
    }

    private String hover(int row, int column) {
        return rows.known(top + row)
                .map(known -> heard.hover(known, LogColumn.values()[column]))
                .orElse("");
    }
}
