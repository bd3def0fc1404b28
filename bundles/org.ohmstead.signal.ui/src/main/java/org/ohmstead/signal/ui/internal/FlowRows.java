// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Layout;
import org.ohmstead.workbench.look.Spacing;

/** Two groups of controls side by side, the first taking what the second leaves; below each other where that is too little. */
final class FlowRows extends Layout {
    private FlowRows() {}

    /** Arranges the two children of a composite so. */
    static void applyTo(Composite composite) {
        composite.setLayout(new FlowRows());
    }

    private static Point size(Control child, boolean changed) {
        return child.computeSize(SWT.DEFAULT, SWT.DEFAULT, changed);
    }

    private static boolean together(Point first, Point second, int width) {
        return first.x + Spacing.GAP + second.x <= width;
    }

    @Override
    protected Point computeSize(Composite composite, int widthHint, int heightHint, boolean flushCache) {
        Control[] children = composite.getChildren();
        Point first = size(children[0], flushCache);
        Point second = size(children[1], flushCache);
        int wanted = widthHint == SWT.DEFAULT ? first.x + Spacing.GAP + second.x : widthHint;
        int height = together(first, second, wanted) ? Math.max(first.y, second.y) : first.y + Spacing.TIGHT + second.y;
        return new Point(wanted, height);
    }

    @Override
    protected void layout(Composite composite, boolean flushCache) {
        Control[] children = composite.getChildren();
        Rectangle area = composite.getClientArea();
        Point first = size(children[0], flushCache);
        Point second = size(children[1], flushCache);
        if (together(first, second, area.width)) {
            int left = area.width - second.x;
            children[0].setBounds(area.x, area.y, left - Spacing.GAP, area.height);
            children[1].setBounds(area.x + left, area.y, second.x, area.height);
        } else {
            children[0].setBounds(area.x, area.y, area.width, first.y);
            children[1].setBounds(area.x, area.y + first.y + Spacing.TIGHT, area.width, second.y);
        }
    }

    @Override
    protected boolean flushCache(Control control) {
        return true;
    }
}
