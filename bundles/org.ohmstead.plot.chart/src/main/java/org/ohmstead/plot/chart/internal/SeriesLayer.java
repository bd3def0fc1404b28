// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.List;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Scale;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** Draws a series of any style but bars: area, line or stems, then uncertainty bars, then markers. */
record SeriesLayer(Series series) implements Layer {
    private static final int MOST_DOTTED_STEMS = 80;
    private static final double STEM_DOT_SIZE = 3;
    private static final double DENSE_SHARE = 1.5;
    private static final double MERGING_SHARE = 12;

    static BasicStroke lineStroke(Style style) {
        return switch (style) {
            case DASHED_LINE -> Look.DASHED_STROKE;
            case LINE_AND_MARKERS -> Look.FINE_STROKE;
            default -> Look.LINE_STROKE;
        };
    }

    @Override
    public void draw(Stage stage) {
        if (series.points().isEmpty()) {
            return;
        }
        Color colour = stage.look().tone(series.tone());
        if (series.style().hasLine()) {
            drawLine(stage, colour);
        }
        if (series.style() == Style.STEMS) {
            drawStems(stage, colour);
        }
        drawUncertainty(stage, series.points(), colour);
        if (series.style().hasMarkers()) {
            for (PlotPoint point : series.points()) {
                drawMarker(stage, point, Palette.marker(series.tone()), Look.MARKER_SIZE);
            }
        }
    }

    /** Draws I-shaped bars through the points that have an uncertainty, all as one path of three strokes each. */
    static void drawUncertainty(Stage stage, List<PlotPoint> points, Color colour) {
        Path2D bars = uncertaintyBars(stage, points);
        if (bars.getCurrentPoint() != null) {
            stage.graphics().setPaint(colour);
            stage.graphics().setStroke(Look.FINE_STROKE);
            stage.graphics().draw(bars);
        }
    }

    static Path2D uncertaintyBars(Stage stage, List<PlotPoint> points) {
        Path2D bars = new Path2D.Double();
        double cap = Look.CAP_WIDTH / 2;
        for (PlotPoint point : points) {
            double x = stage.x(point.x());
            if (point.barHalfLength().isEmpty()
                    || x < stage.area().getMinX()
                    || x > stage.area().getMaxX()) {
                continue;
            }
            double half = point.barHalfLength().getAsDouble();
            double top = stage.y(point.y() + half);
            double bottom = stage.y(point.y() - half);
            stroke(bars, x, top, x, bottom);
            stroke(bars, x - cap, top, x + cap, top);
            stroke(bars, x - cap, bottom, x + cap, bottom);
        }
        return bars;
    }

    private void drawLine(Stage stage, Color colour) {
        Graphics2D graphics = stage.graphics();
        Polyline line = Polyline.of(series.points(), stage);
        List<Point2D> points = line.thinned(stage);
        if (series.style() == Style.FILLED) {
            Path2D area = Polyline.path(points);
            area.lineTo(points.get(points.size() - 1).getX(), stage.baseline());
            area.lineTo(points.get(0).getX(), stage.baseline());
            area.closePath();
            graphics.setPaint(stage.look().areaFill(series.tone()));
            graphics.fill(area);
        }
        if (points.size() > 1) {
            BasicStroke stroke = isDense(points, stage) ? Look.DENSE_STROKE : lineStroke(series.style());
            if (!DenseDrawing.draw(line, stage, stroke, colour)) {
                graphics.setPaint(colour);
                graphics.setStroke(stroke);
                graphics.draw(Polyline.path(points));
            }
        }
    }

    // A spectrum's thicket is read more easily in thin lines; a record of so many cycles that they merge must be solid.
    private boolean isDense(List<Point2D> drawn, Stage stage) {
        double width = stage.area().getWidth();
        return series.style() == Style.LINE
                && drawn.size() > width * DENSE_SHARE
                && series.points().size() < width * MERGING_SHARE
                && (stage.xMapping().scale() == Scale.LOG || !merges(drawn));
    }

    /** Whether even thin lines would touch: whether on its mean way up or down the line advances by less than their width. */
    private static boolean merges(List<Point2D> drawn) {
        double way = 0;
        double weightedAdvance = 0;
        int start = 0;
        for (int i = 1; i < drawn.size(); i++) {
            boolean turns = i == drawn.size() - 1
                    || (drawn.get(i + 1).getY() - drawn.get(i).getY())
                                    * (drawn.get(i).getY() - drawn.get(start).getY())
                            < 0;
            if (turns) {
                double height = Math.abs(drawn.get(i).getY() - drawn.get(start).getY());
                way += height;
                weightedAdvance +=
                        height * (drawn.get(i).getX() - drawn.get(start).getX());
                start = i;
            }
        }
        return weightedAdvance < way * Look.DENSE_STROKE.getLineWidth();
    }

    private void drawStems(Stage stage, Color colour) {
        Path2D stems = new Path2D.Double();
        double bottom = stage.area().getMaxY();
        for (PlotPoint point : series.points()) {
            double x = stage.x(point.x());
            double top = stage.y(point.y());
            if (top < bottom && x >= stage.area().getMinX() && x <= stage.area().getMaxX()) {
                stroke(stems, x, bottom, x, top);
            }
        }
        stage.graphics().setPaint(colour);
        stage.graphics().setStroke(Look.STEM_STROKE);
        stage.graphics().draw(stems);
        if (series.points().size() <= MOST_DOTTED_STEMS) {
            for (PlotPoint point : series.points()) {
                drawMarker(stage, point, MarkerShape.CIRCLE, STEM_DOT_SIZE);
            }
        }
    }

    private void drawMarker(Stage stage, PlotPoint point, MarkerShape shape, double size) {
        double x = stage.x(point.x());
        double y = stage.y(point.y());
        if (stage.area().intersects(x - size, y - size, 2 * size, 2 * size)) {
            Color colour = stage.look().tone(series.tone());
            MarkerOutlines.draw(stage.graphics(), shape, x, y, size, colour, stage.look().ground);
        }
    }

    private static void stroke(Path2D path, double fromX, double fromY, double toX, double toY) {
        path.moveTo(fromX, fromY);
        path.lineTo(toX, toY);
    }
}
