// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Layout;
import org.eclipse.swt.widgets.Text;

/**
 * Fields for a line of text. GTK reckons the height of a field, and where its text stands, by the font that it had first: in large type a
 * field stands in a box that gives it the height of its font, and begins at the left.
 */
final class Fields {
    private static final double ROOM = 1.25;

    private Fields() {}

    /**
     * Makes a field in a grid.
     *
     * @param columns how many columns of the grid it takes
     * @param digits how many digits it has room for
     */
    static Text make(Composite grid, PaneStyle style, String id, int columns, int digits) {
        boolean large = style.font().isPresent();
        Composite parent = large ? style.dress(new Composite(grid, SWT.NONE)) : grid;
        Text field = style.named(new Text(parent, SWT.BORDER | SWT.SINGLE | (large ? SWT.LEFT : SWT.RIGHT)), id);
        Point size = size(field, digits);
        if (large) {
            parent.setLayout(new Box(size));
            GridDataFactory.swtDefaults()
                    .align(SWT.END, SWT.CENTER)
                    .span(columns, 1)
                    .applyTo(parent);
        } else {
            GridDataFactory.swtDefaults()
                    .align(SWT.END, SWT.CENTER)
                    .span(columns, 1)
                    .hint(size.x, SWT.DEFAULT)
                    .applyTo(field);
        }
        return field;
    }

    private static Point size(Text field, int digits) {
        GC gc = new GC(field);
        try {
            gc.setFont(field.getFont());
            Point digit = gc.textExtent("0");
            return new Point(digits * digit.x, (int) (ROOM * digit.y));
        } finally {
            gc.dispose();
        }
    }

    /** Gives its one child a size. */
    private static final class Box extends Layout {
        private final Point size;

        Box(Point size) {
            this.size = size;
        }

        @Override
        protected Point computeSize(Composite composite, int widthHint, int heightHint, boolean flush) {
            return new Point(size.x, size.y);
        }

        @Override
        protected void layout(Composite composite, boolean flush) {
            composite.getChildren()[0].setBounds(composite.getClientArea());
        }
    }
}
