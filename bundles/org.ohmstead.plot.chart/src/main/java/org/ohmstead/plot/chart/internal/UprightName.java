// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.ui.RectangleEdge;

/**
 * Room for the name along the vertical axis. It stands beside the middle of the axis; where it is longer than that, it moves down before
 * it would run over the heading, and is set smaller where the chart is too low even so.
 */
final class UprightName {
    private static final double LEAST_SIZE = 0.7;

    private UprightName() {}

    /** Returns the area beside whose middle the name of an axis is to be drawn, after making its font small enough. */
    static Rectangle2D beside(
            ValueAxis axis, Graphics2D graphics, Rectangle2D plotArea, Rectangle2D dataArea, RectangleEdge edge) {
        if (!RectangleEdge.isLeftOrRight(edge) || axis.getLabel() == null) {
            return dataArea;
        }
        Font font = axis.getLabelFont();
        double length = length(axis, graphics, font);
        if (length > plotArea.getHeight()) {
            double share = Math.max(LEAST_SIZE, plotArea.getHeight() / length);
            axis.setLabelFont(font.deriveFont((float) (font.getSize2D() * share)));
            length *= share;
        }
        double middle = Math.max(dataArea.getCenterY(), plotArea.getMinY() + length / 2);
        return new Rectangle2D.Double(
                dataArea.getX(), middle - dataArea.getHeight() / 2, dataArea.getWidth(), dataArea.getHeight());
    }

    private static double length(ValueAxis axis, Graphics2D graphics, Font font) {
        return font.getStringBounds(axis.getLabel(), graphics.getFontRenderContext())
                .getWidth();
    }
}
