// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import java.awt.geom.Rectangle2D;
import java.util.Objects;

/**
 * Where things are in a drawn chart, for cursors, zooming and tests.
 *
 * @param left left edge of the area between the axes, in points from the left of the drawing
 * @param top upper edge of that area, in points from the top of the drawing
 * @param width its width in points
 * @param height its height in points
 * @param x how the horizontal axis lies on the drawing
 * @param y how the vertical axis lies on the drawing
 */
public record ChartLayout(double left, double top, double width, double height, AxisMapping x, AxisMapping y) {
    /** Checks the parameters. */
    public ChartLayout {
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
    }

    /** Returns the area between the axes as a new rectangle. */
    public Rectangle2D plotArea() {
        return new Rectangle2D.Double(left, top, width, height);
    }
}
