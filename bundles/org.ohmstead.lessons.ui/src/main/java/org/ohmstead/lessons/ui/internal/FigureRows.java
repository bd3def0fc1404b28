// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Layout;
import org.ohmstead.workbench.look.Spacing;

/** Lays pairs of a name and a value out: in rows below each other, where there is width for it in two columns; a long name wraps. */
final class FigureRows extends Layout {
    private static final int USUAL_WIDTH = 240;
    private static final int BETWEEN = 3 * Spacing.GAP;

    private final int twoColumnsFrom;

    /**
     * Makes the layout.
     *
     * @param twoColumnsFrom the least width of two columns
     */
    FigureRows(int twoColumnsFrom) {
        this.twoColumnsFrom = twoColumnsFrom;
    }

    @Override
    protected Point computeSize(Composite composite, int widthHint, int heightHint, boolean flush) {
        int width = widthHint == SWT.DEFAULT ? USUAL_WIDTH : widthHint;
        return new Point(width, heightHint == SWT.DEFAULT ? arrange(composite, width, false) : heightHint);
    }

    @Override
    protected void layout(Composite composite, boolean flush) {
        Rectangle room = composite.getClientArea();
        arrange(composite, room.width, true);
    }

    /** Returns the height that is needed. */
    private int arrange(Composite composite, int width, boolean move) {
        Control[] children = composite.getChildren();
        int pairs = children.length / 2;
        int columns = width >= twoColumnsFrom && pairs > 1 ? 2 : 1;
        int rows = (pairs + columns - 1) / columns;
        int columnWidth = (width - (columns - 1) * BETWEEN) / columns;
        int tallest = 0;
        for (int column = 0; column < columns; column++) {
            int from = column * rows;
            int to = Math.min(pairs, from + rows);
            int valueWidth = 0;
            for (int i = from; i < to; i++) {
                valueWidth = Math.max(valueWidth, children[2 * i + 1].computeSize(SWT.DEFAULT, SWT.DEFAULT).x);
            }
            int nameWidth = Math.max(1, columnWidth - valueWidth - Spacing.GAP);
            int left = column * (columnWidth + BETWEEN);
            int top = 0;
            for (int i = from; i < to; i++) {
                int nameHeight = children[2 * i].computeSize(nameWidth, SWT.DEFAULT).y;
                int valueHeight = children[2 * i + 1].computeSize(SWT.DEFAULT, SWT.DEFAULT).y;
                if (move) {
                    children[2 * i].setBounds(left, top, nameWidth, nameHeight);
                    children[2 * i + 1].setBounds(left + columnWidth - valueWidth, top, valueWidth, valueHeight);
                }
                top += Math.max(nameHeight, valueHeight) + Spacing.TIGHT;
            }
            tallest = Math.max(tallest, top);
        }
        return Math.max(0, tallest - Spacing.TIGHT);
    }
}
