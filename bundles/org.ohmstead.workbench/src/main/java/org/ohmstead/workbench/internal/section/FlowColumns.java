// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.HashMap;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Layout;
import org.ohmstead.workbench.look.Spacing;

/** Puts the children into as many columns of equal width as fit, row by row; in a narrow window below each other. */
final class FlowColumns extends Layout {
    private static final int BETWEEN_COLUMNS = 2 * Spacing.MARGIN;

    private final int leastWidth;
    private final int mostColumns;
    /** Heights by width: a page is measured at the same few widths again and again, and measuring is dear. */
    private final Map<Control, Map<Integer, Integer>> heights = new HashMap<>();

    /**
     * Makes the layout.
     *
     * @param leastWidth of a column in points
     * @param mostColumns never more than these
     */
    FlowColumns(int leastWidth, int mostColumns) {
        this.leastWidth = leastWidth;
        this.mostColumns = mostColumns;
    }

    @Override
    protected Point computeSize(Composite composite, int widthHint, int heightHint, boolean flushCache) {
        int width = widthHint == SWT.DEFAULT ? leastWidth : widthHint;
        return new Point(width, arrange(composite, new Rectangle(0, 0, width, 0), false, flushCache));
    }

    @Override
    protected void layout(Composite composite, boolean flushCache) {
        arrange(composite, composite.getClientArea(), true, flushCache);
    }

    @Override
    protected boolean flushCache(Control control) {
        heights.remove(control);
        return true;
    }

    private int arrange(Composite composite, Rectangle area, boolean place, boolean flushCache) {
        if (flushCache) {
            heights.clear();
        }
        Control[] children = composite.getChildren();
        int columns =
                Math.max(1, Math.min(mostColumns, (area.width + BETWEEN_COLUMNS) / (leastWidth + BETWEEN_COLUMNS)));
        int columnWidth = (area.width - (columns - 1) * BETWEEN_COLUMNS) / columns;
        int y = area.y;
        for (int first = 0; first < children.length; first += columns) {
            int rowHeight = 0;
            for (int index = first; index < Math.min(first + columns, children.length); index++) {
                rowHeight = Math.max(rowHeight, height(children[index], columnWidth, flushCache));
            }
            for (int index = first; place && index < Math.min(first + columns, children.length); index++) {
                int x = area.x + (index - first) * (columnWidth + BETWEEN_COLUMNS);
                children[index].setBounds(x, y, columnWidth, rowHeight);
            }
            y += rowHeight + Spacing.MARGIN;
        }
        return Math.max(0, y - area.y - Spacing.MARGIN);
    }

    private int height(Control child, int width, boolean flushCache) {
        return heights.computeIfAbsent(child, any -> new HashMap<>())
                .computeIfAbsent(width, any -> child.computeSize(width, SWT.DEFAULT, flushCache).y);
    }
}
