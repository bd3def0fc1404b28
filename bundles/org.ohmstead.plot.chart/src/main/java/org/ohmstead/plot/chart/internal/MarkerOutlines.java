// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import org.ohmstead.plot.MarkerShape;

/** The outlines of markers and their drawing. All shapes of one size cover about the same area. */
final class MarkerOutlines {
    private MarkerOutlines() {}

    static Shape outline(MarkerShape shape, double x, double y, double size) {
        double half = size / 2;
        return switch (shape) {
            case CIRCLE, HOLLOW_CIRCLE -> new Ellipse2D.Double(x - half, y - half, size, size);
            case SQUARE, HOLLOW_SQUARE ->
                new Rectangle2D.Double(x - half * 0.9, y - half * 0.9, size * 0.9, size * 0.9);
            case DIAMOND, HOLLOW_DIAMOND ->
                polygon(x, y - half * 1.25, x + half * 1.25, y, x, y + half * 1.25, x - half * 1.25, y);
            case TRIANGLE_UP, HOLLOW_TRIANGLE_UP ->
                polygon(x, y - half * 1.25, x + half * 1.2, y + half * 0.85, x - half * 1.2, y + half * 0.85);
            case TRIANGLE_DOWN ->
                polygon(x, y + half * 1.25, x + half * 1.2, y - half * 0.85, x - half * 1.2, y - half * 0.85);
            case CROSS -> strokes(x - half, y - half, x + half, y + half, x - half, y + half, x + half, y - half);
            case PLUS -> strokes(x - half * 1.25, y, x + half * 1.25, y, x, y - half * 1.25, x, y + half * 1.25);
        };
    }

    static void draw(
            Graphics2D graphics, MarkerShape shape, double x, double y, double size, Color colour, Color ground) {
        Shape outline = outline(shape, x, y, size);
        boolean strokesOnly = shape == MarkerShape.CROSS || shape == MarkerShape.PLUS;
        if (!strokesOnly) {
            graphics.setPaint(shape.isFilled() ? colour : ground);
            graphics.fill(outline);
        }
        if (!shape.isFilled()) {
            graphics.setPaint(colour);
            graphics.setStroke(Look.OUTLINE_STROKE);
            graphics.draw(outline);
        }
    }

    private static Shape polygon(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.closePath();
        return path;
    }

    private static Shape strokes(double... xy) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < xy.length; i += 4) {
            path.moveTo(xy[i], xy[i + 1]);
            path.lineTo(xy[i + 2], xy[i + 3]);
        }
        return path;
    }
}
