// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import org.eclipse.jface.layout.GridLayoutFactory;

/** The distances between widgets, in points, the same in every part of the workbench. */
public final class Spacing {
    /** Between the edge of a view and what it holds, and between groups. */
    public static final int MARGIN = 12;
    /** Between things that stand beside each other. */
    public static final int GAP = 8;
    /** Between things that belong together. */
    public static final int TIGHT = 4;

    private Spacing() {}

    /** Returns a grid for a whole view: margins at its edges, gaps between its parts. */
    public static GridLayoutFactory page(int columns) {
        return GridLayoutFactory.fillDefaults()
                .numColumns(columns)
                .margins(MARGIN, MARGIN)
                .spacing(GAP, GAP);
    }

    /** Returns a grid for a part within a view: no margins, gaps between its parts. */
    public static GridLayoutFactory group(int columns) {
        return GridLayoutFactory.fillDefaults().numColumns(columns).spacing(GAP, GAP);
    }

    /** Returns a grid for things that belong together: no margins, small gaps. */
    public static GridLayoutFactory tight(int columns) {
        return GridLayoutFactory.fillDefaults().numColumns(columns).spacing(TIGHT, TIGHT);
    }
}
