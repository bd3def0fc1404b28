// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import org.eclipse.swt.graphics.Rectangle;
import org.ohmstead.plot.chart.AxisMapping;

/**
 * Where the area between the axes lies in a {@link ChartCanvas} and which part of the x axis is in view, so that something else can be
 * drawn in line with it.
 *
 * @param bounds the area in points from the upper left corner of the canvas
 * @param x how the x axis lies, in points from the left edge of the canvas
 */
public record ChartArea(Rectangle bounds, AxisMapping x) {
    /** Copies the rectangle. */
    public ChartArea {
        bounds = copy(bounds);
    }

    private static Rectangle copy(Rectangle from) {
        return new Rectangle(from.x, from.y, from.width, from.height);
    }

    /** Returns the area as a new rectangle. */
    @Override
    public Rectangle bounds() {
        return copy(bounds);
    }
}
