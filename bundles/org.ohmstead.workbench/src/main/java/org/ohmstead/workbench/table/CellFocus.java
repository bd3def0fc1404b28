// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.workbench.look.Tones;

/** The cell that the keyboard acts on: a column within the row where the selection was last moved to. Drawn as a frame. */
final class CellFocus<R> {
    private final Table table;
    private final Supplier<List<Line<R>>> displayed;
    private final Runnable moved;
    private Line<R> line;
    private int column;

    CellFocus(Table table, Supplier<List<Line<R>>> displayed, Runnable moved) {
        this.table = table;
        this.displayed = displayed;
        this.moved = moved;
        table.addListener(SWT.Selection, event -> follow(event.item instanceof TableItem item ? item : null));
        table.addListener(SWT.MouseDown, this::pressed);
        table.addListener(SWT.PaintItem, this::paint);
        table.addListener(SWT.FocusIn, event -> focusGained());
        table.addListener(SWT.FocusOut, event -> table.redraw());
    }

    int column() {
        return column;
    }

    /** Returns the line of the cell: the one the selection was last moved to, else the first selected; empty when none is. */
    Optional<Line<R>> line() {
        List<Line<R>> chosen = chosen();
        return chosen.contains(line) ? Optional.of(line) : chosen.stream().findFirst();
    }

    /** Selects a line alone and gives its cell in a column the focus. */
    void go(Line<R> newLine, int newColumn) {
        line = newLine;
        column = newColumn;
        choose(List.of(newLine));
        table.showColumn(table.getColumn(column));
        reveal(displayed.get().indexOf(newLine));
        table.redraw();
        moved.run();
    }

    /** Brings a row in sight, in the middle when it was out of it. */
    private void reveal(int index) {
        // The top index may be one that GTK was asked for and has not gone to; what is drawn where is certain.
        int height = table.getClientArea().height - table.getHeaderHeight();
        int inSight = Math.max(1, height / Math.max(1, table.getItemHeight()) - 1);
        int y = table.getItem(index).getBounds(column).y;
        if (y < 0 || y > height) {
            table.setTopIndex(Math.max(0, index - inSight / 2));
        }
    }

    void goColumn(int newColumn) {
        column = Math.max(0, Math.min(table.getColumnCount() - 1, newColumn));
        table.showColumn(table.getColumn(column));
        table.redraw();
        moved.run();
    }

    /** Returns the column at a place within the table, or -1. */
    int columnAt(int x, int y) {
        TableItem item = table.getItem(new Point(x, y));
        for (int index = 0; item != null && index < table.getColumnCount(); index++) {
            Rectangle cell = item.getBounds(index);
            if (x >= cell.x && x < cell.x + cell.width) {
                return index;
            }
        }
        return -1;
    }

    /** Returns the selected lines in the order in which they stand. */
    List<Line<R>> chosen() {
        List<Line<R>> lines = displayed.get();
        return Arrays.stream(table.getSelectionIndices())
                .sorted()
                .filter(index -> index < lines.size())
                .mapToObj(lines::get)
                .toList();
    }

    /** Selects those of some lines that are shown, and no others. */
    void choose(List<Line<R>> lines) {
        Set<Line<R>> wanted = Collections.newSetFromMap(new IdentityHashMap<>());
        wanted.addAll(lines);
        List<Line<R>> all = displayed.get();
        table.setSelection(IntStream.range(0, all.size())
                .filter(index -> wanted.contains(all.get(index)))
                .toArray());
    }

    private void follow(TableItem item) {
        if (item != null) {
            line = displayed.get().get(table.indexOf(item));
        }
        table.redraw();
        moved.run();
    }

    private void pressed(Event event) {
        int at = columnAt(event.x, event.y);
        if (at >= 0) {
            column = at;
            table.redraw();
            moved.run();
        }
    }

    private void focusGained() {
        if (table.getSelectionCount() == 0 && table.getItemCount() > 0) {
            go(displayed.get().get(0), column);
        }
        table.redraw();
    }

    private void paint(Event event) {
        if (event.index != column || !table.isFocusControl()) {
            return;
        }
        TableItem item = (TableItem) event.item;
        int index = table.indexOf(item);
        if (index < 0 || index >= displayed.get().size() || displayed.get().get(index) != line().orElse(null)) {
            return;
        }
        Tones tones = Tones.of(table);
        Rectangle cell = item.getBounds(column);
        GC gc = event.gc;
        gc.setLineWidth(1);
        gc.setForeground(tones.background());
        gc.drawRectangle(cell.x + 2, cell.y + 2, cell.width - 5, cell.height - 5);
        gc.setForeground(tones.text());
        gc.drawRectangle(cell.x, cell.y, cell.width - 1, cell.height - 1);
        gc.drawRectangle(cell.x + 1, cell.y + 1, cell.width - 3, cell.height - 3);
    }
}
