// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.function.BiFunction;
import org.eclipse.jface.window.DefaultToolTip;
import org.eclipse.jface.window.ToolTip;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.workbench.look.Spacing;

/** The text that shows while the mouse rests on a cell of a table. */
public final class CellHover extends DefaultToolTip {
    private final Table table;
    private final BiFunction<Integer, Integer, String> text;

    /** A cell that the mouse is over. */
    private record Cell(int row, int column) {}

    /**
     * Has a table show texts.
     *
     * @param text gives one by row and column; null or empty for none
     */
    public CellHover(Table table, BiFunction<Integer, Integer, String> text) {
        super(table, ToolTip.NO_RECREATE, false);
        this.table = table;
        this.text = text;
        setShift(new Point(Spacing.TIGHT, 2 * Spacing.GAP));
    }

    @Override
    protected Object getToolTipArea(Event event) {
        TableItem item = table.getItem(new Point(event.x, event.y));
        for (int column = 0; item != null && column < table.getColumnCount(); column++) {
            if (item.getBounds(column).contains(event.x, event.y)) {
                return new Cell(table.indexOf(item), column);
            }
        }
        return null;
    }

    @Override
    protected boolean shouldCreateToolTip(Event event) {
        String shown = getText(event);
        return super.shouldCreateToolTip(event) && shown != null && !shown.isEmpty();
    }

    @Override
    protected String getText(Event event) {
        return getToolTipArea(event) instanceof Cell cell ? text.apply(cell.row(), cell.column()) : null;
    }
}
