// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

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
        return new Point(width, arrange(composite, 0, 0, width, false));
    }

    @Override
    protected void layout(Composite composite, boolean flushCache) {
        Rectangle area = composite.getClientArea();
        arrange(composite, area.x, area.y, area.width, true);
    }

    private int arrange(Composite composite, int left, int top, int width, boolean place) {
        Control[] children = composite.getChildren();
        int columns = Math.max(1, Math.min(mostColumns, (width + BETWEEN_COLUMNS) / (leastWidth + BETWEEN_COLUMNS)));
        int columnWidth = (width - (columns - 1) * BETWEEN_COLUMNS) / columns;
        int y = top;
        for (int first = 0; first < children.length; first += columns) {
            int rowHeight = 0;
            for (int index = first; index < Math.min(first + columns, children.length); index++) {
                int height = children[index].computeSize(columnWidth, SWT.DEFAULT).y;
                rowHeight = Math.max(rowHeight, height);
            }
            for (int index = first; place && index < Math.min(first + columns, children.length); index++) {
                int x = left + (index - first) * (columnWidth + BETWEEN_COLUMNS);
                children[index].setBounds(x, y, columnWidth, rowHeight);
            }
            y += rowHeight + Spacing.MARGIN;
        }
        return Math.max(0, y - top - Spacing.MARGIN);
    }
}
