// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.table.CellHover;
import org.ohmstead.workbench.table.CopiedTable;

/** Shows a {@link Sheet}: figures on the right, more on hover, Ctrl+C copies the selected rows or all of them. */
final class SheetTable {
    private static final Messages TEXTS = Messages.of(SheetTable.class);

    private static final int CELL_PADDING = 18;
    private static final int WIDEST = 220;
    private static final int LONGEST = 80;
    /** Heads are bold, which makes them wider. */
    private static final double HEAD_RATIO = 1.1;

    private final Table table;
    private Supplier<Sheet> maker = () -> new Sheet(List.of(), List.of());
    private Sheet sheet = maker.get();
    private int iconWidth;

    SheetTable(Composite parent, String id) {
        table = Ids.name(new Table(parent, SWT.MULTI | SWT.FULL_SELECTION | SWT.BORDER), id);
        table.setHeaderVisible(true);
        table.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.stateMask == SWT.MOD1 && event.keyCode == 'c') {
                copy();
            }
        }));
        new CellHover(table, this::hover);
        Menu menu = new Menu(table);
        MenuItem copied = new MenuItem(menu, SWT.PUSH);
        copied.setText(TEXTS.text("table.copy"));
        copied.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> copy()));
        table.setMenu(menu);
    }

    Table control() {
        return table;
    }

    /** Leaves room for an icon in the first column. */
    void reserveIcon(int width) {
        iconWidth = width;
    }

    /**
     * Shows other texts; rows stay selected, and what has not changed is not touched.
     *
     * @param newMaker makes the same rows each time; asked again for the numbers as they are copied
     */
    void show(Supplier<Sheet> newMaker) {
        Sheet before = sheet;
        maker = newMaker;
        Sheet wanted = newMaker.get();
        sheet = wanted;
        table.setRedraw(false);
        try {
            while (table.getColumnCount() < wanted.headers().size()) {
                boolean numeric = wanted.headers().get(table.getColumnCount()).numeric();
                new TableColumn(table, numeric ? SWT.RIGHT : SWT.LEFT);
            }
            while (table.getColumnCount() > wanted.headers().size()) {
                table.getColumn(table.getColumnCount() - 1).dispose();
            }
            while (table.getItemCount() > wanted.rows().size()) {
                table.getItem(table.getItemCount() - 1).dispose();
            }
            while (table.getItemCount() < wanted.rows().size()) {
                new TableItem(table, SWT.NONE);
            }
            for (int column = 0; column < wanted.headers().size(); column++) {
                showColumn(before, column);
            }
        } finally {
            table.setRedraw(true);
        }
    }

    private void showColumn(Sheet before, int column) {
        List<String> texts = texts(sheet, column);
        TableColumn header = table.getColumn(column);
        String hint = sheet.headers().get(column).hint();
        if (!hint.equals(header.getToolTipText())) {
            header.setToolTipText(hint);
        }
        if (texts.equals(texts(before, column))) {
            return;
        }
        header.setText(texts.get(0));
        for (int row = 0; row < sheet.rows().size(); row++) {
            TableItem item = table.getItem(row);
            String text = texts.get(row + 1);
            if (!text.equals(item.getText(column))) {
                item.setText(column, text);
            }
        }
        if (header.getWidth() < WIDEST) {
            int width = width(texts) + (column == 0 ? iconWidth : 0);
            header.setWidth(Math.max(width, header.getWidth()));
        }
    }

    private static List<String> texts(Sheet sheet, int column) {
        List<String> texts = new ArrayList<>();
        if (column < sheet.headers().size()) {
            texts.add(sheet.headers().get(column).text());
            sheet.rows().forEach(row -> texts.add(row.text(column)));
        }
        return texts;
    }

    private int width(List<String> texts) {
        GC gc = new GC(table);
        try {
            gc.setFont(table.getFont());
            // What is longer is wider than a column may be, and takes long to measure.
            int widest = texts.stream()
                    .map(text -> text.substring(0, Math.min(LONGEST, text.length())))
                    .distinct()
                    .mapToInt(text -> gc.stringExtent(text).x)
                    .max()
                    .orElse(0);
            int head = (int) Math.ceil(HEAD_RATIO * gc.stringExtent(texts.get(0)).x);
            return Math.min(WIDEST, Math.max(widest, head) + CELL_PADDING);
        } finally {
            gc.dispose();
        }
    }

    /** Puts the selected rows, or all when none is selected, on the clipboard. */
    void copy() {
        Sheet plain = Numbers.withPoint(maker);
        List<Sheet.Row> rows = new ArrayList<>();
        for (int index : table.getSelectionIndices()) {
            rows.add(plain.rows().get(index));
        }
        Sheet copied = rows.isEmpty() ? plain : new Sheet(plain.headers(), rows);
        if (copied.rows().isEmpty()) {
            return;
        }
        CopiedTable.toClipboard(table.getDisplay(), copied.tabText());
    }

    /** Returns what to show when the pointer rests on a cell; empty for nothing. */
    String hover(int row, int column) {
        return row < sheet.rows().size() && column < sheet.headers().size()
                ? sheet.rows().get(row).cells().get(column).hover()
                : "";
    }
}
