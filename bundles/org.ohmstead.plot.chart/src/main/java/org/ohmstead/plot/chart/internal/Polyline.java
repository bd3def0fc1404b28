// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.plot.PlotPoint;

/**
 * The points of a line where they are drawn.
 *
 * @param points every point, and where the line enters and leaves what renderers can reckon with
 * @param rising whether x never falls
 */
record Polyline(List<Point2D> points, boolean rising) {
    static Polyline of(List<PlotPoint> points, Stage stage) {
        List<Point2D> placed = new ArrayList<>(points.size());
        boolean rising = true;
        double lastX = Double.NaN;
        double lastY = Double.NaN;
        for (PlotPoint point : points) {
            double x = stage.xMapping().toPosition(point.x());
            double y = stage.yMapping().toPosition(point.y());
            if (Clipping.isFar(lastX, lastY) || Clipping.isFar(x, y)) {
                placed.addAll(Clipping.crossings(lastX, lastY, x, y));
            }
            Point2D next = new Point2D.Double(stage.x(point.x()), stage.y(point.y()));
            rising &= placed.isEmpty()
                    || next.getX() >= placed.get(placed.size() - 1).getX();
            placed.add(next);
            lastX = x;
            lastY = y;
        }
        return new Polyline(placed, rising);
    }

    /**
     * Returns the points that are enough. Where several fall into one column of a point's width, only the first, the
     * last, the lowest and the highest stay: the picture is the same and its file small.
     */
    List<Point2D> thinned(Stage stage) {
        return thinned(stage, 1);
    }

    /** As {@link #thinned(Stage)}, for columns of which so many go into a point. */
    List<Point2D> thinned(Stage stage, double columnsOfPoint) {
        return rising && points.size() > stage.area().getWidth() * columnsOfPoint
                ? thinned(points, stage.area(), columnsOfPoint)
                : points;
    }

    static Path2D path(List<Point2D> points) {
        Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO, points.size() + 2);
        for (Point2D point : points) {
            if (path.getCurrentPoint() == null) {
                path.moveTo(point.getX(), point.getY());
            } else {
                path.lineTo(point.getX(), point.getY());
            }
        }
        return path;
    }

    private static List<Point2D> thinned(List<Point2D> points, Rectangle2D area, double columnsOfPoint) {
        // What lies left or right of the area is one column each: it only leads the line to the edge.
        double left = area.getMinX() - 1;
        double right = area.getMaxX() + 1;
        List<Point2D> kept = new ArrayList<>();
        int start = 0;
        while (start < points.size()) {
            long column = column(points.get(start), left, right, columnsOfPoint);
            int end = start;
            while (end < points.size() && column(points.get(end), left, right, columnsOfPoint) == column) {
                end++;
            }
            keepExtremes(points, start, end, kept);
            start = end;
        }
        return kept;
    }

    private static long column(Point2D point, double left, double right, double columnsOfPoint) {
        return (long) Math.floor(Math.max(left, Math.min(right, point.getX())) * columnsOfPoint);
    }

    private static void keepExtremes(List<Point2D> points, int start, int end, List<Point2D> kept) {
        int lowest = start;
        int highest = start;
        for (int i = start; i < end; i++) {
            lowest = points.get(i).getY() < points.get(lowest).getY() ? i : lowest;
            highest = points.get(i).getY() > points.get(highest).getY() ? i : highest;
        }
        int last = -1;
        for (int i : new int[] {start, Math.min(lowest, highest), Math.max(lowest, highest), end - 1}) {
            if (i > last) {
                kept.add(points.get(i));
                last = i;
            }
        }
    }
}
