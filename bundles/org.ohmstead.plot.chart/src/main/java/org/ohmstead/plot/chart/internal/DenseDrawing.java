// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;

/** Decides which lines are drawn as a {@link DenseLine}: those on pixels that would else take long. */
final class DenseDrawing {
    /** The way up and down, in heights of the area, from which on it pays. */
    private static final double LEAST_HEIGHTS = 12;
    /** Columns of a quarter of a pixel keep every bend where it is seen to be. */
    private static final double COLUMNS_OF_PIXEL = 4;

    private DenseDrawing() {}

    /** Draws the line if it is one for it, and returns whether it was. */
    static boolean draw(Polyline line, Stage stage, BasicStroke stroke, Color colour) {
        Optional<PixelGround> ground = stage.ground();
        AffineTransform transform = stage.graphics().getTransform();
        if (ground.isEmpty() || !line.rising() || stroke.getDashArray() != null || !isPlain(transform)) {
            return false;
        }
        List<Point2D> points = line.thinned(stage, COLUMNS_OF_PIXEL * transform.getScaleX());
        if (heights(points, stage.area()) < LEAST_HEIGHTS) {
            return false;
        }
        double[] x = new double[points.size()];
        double[] y = new double[points.size()];
        Point2D placed = new Point2D.Double();
        for (int i = 0; i < x.length; i++) {
            transform.transform(points.get(i), placed);
            x[i] = placed.getX();
            y[i] = placed.getY();
        }
        Rectangle2D area = transform.createTransformedShape(stage.area()).getBounds2D();
        // A pixel belongs to the area if its middle does, as for the clip of the graphics.
        new DenseLine(
                        ground.get(),
                        (int) Math.ceil(area.getMinX() - 0.5),
                        (int) Math.ceil(area.getMinY() - 0.5),
                        (int) Math.ceil(area.getMaxX() - 0.5),
                        (int) Math.ceil(area.getMaxY() - 0.5))
                .draw(x, y, stroke.getLineWidth() * transform.getScaleX() / 2, colour);
        return true;
    }

    private static boolean isPlain(AffineTransform transform) {
        return transform.getShearX() == 0
                && transform.getShearY() == 0
                && transform.getScaleX() > 0
                && transform.getScaleX() == transform.getScaleY();
    }

    private static double heights(List<Point2D> points, Rectangle2D area) {
        double way = 0;
        double last = Double.NaN;
        for (Point2D point : points) {
            double y = Math.max(area.getMinY(), Math.min(area.getMaxY(), point.getY()));
            way += Double.isNaN(last) ? 0 : Math.abs(y - last);
            last = y;
        }
        return way / area.getHeight();
    }
}
