// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;

/** Draws the marks: all lines, then all points. */
record MarkLayer(Plot plot) implements Layer {
    @Override
    public void draw(Stage stage) {
        Graphics2D graphics = stage.graphics();
        Rectangle2D area = stage.area();
        for (Mark mark : plot.marks()) {
            graphics.setPaint(stage.look().toneOrInk(mark.tone()));
            graphics.setStroke(Look.MARK_STROKE);
            if (mark instanceof Mark.VerticalLine line) {
                double x = stage.x(line.x());
                graphics.draw(new Line2D.Double(x, area.getMinY(), x, area.getMaxY()));
            } else if (mark instanceof Mark.HorizontalLine line) {
                double y = stage.y(line.y());
                graphics.draw(new Line2D.Double(area.getMinX(), y, area.getMaxX(), y));
            }
        }
        for (Mark mark : plot.marks()) {
            if (mark instanceof Mark.Point point) {
                Color colour = stage.look().toneOrInk(point.tone());
                double x = stage.x(point.x());
                double y = stage.y(point.y());
                MarkerOutlines.draw(graphics, point.shape(), x, y, Look.MARK_SIZE, colour, stage.look().ground);
            }
        }
    }
}
