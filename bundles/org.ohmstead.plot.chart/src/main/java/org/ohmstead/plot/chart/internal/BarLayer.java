// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** Draws all bar series together, since their places depend on one another: side by side, or stacked. */
record BarLayer(List<Series> series) implements Layer {
    private static final double WIDEST_GROUP = 54;
    private static final double FILL_OF_GAP = 0.72;
    private static final double LONE_SHARE = 0.3;
    private static final double SEAM = 0.8;

    @Override
    public void draw(Stage stage) {
        double group = groupWidth(stage);
        boolean anyStacked = series.stream().anyMatch(each -> each.style() == Style.STACKED_BARS);
        long columns =
                series.stream().filter(each -> each.style() == Style.BARS).count() + (anyStacked ? 1 : 0);
        double width = group / columns;
        Map<Double, Double> stackTops = new HashMap<>();
        int column = anyStacked ? 1 : 0;
        for (Series each : series) {
            if (each.style() == Style.STACKED_BARS) {
                drawColumn(stage, each, -group / 2, width, stackTops);
            } else {
                drawColumn(stage, each, -group / 2 + column * width, width, new HashMap<>());
                column++;
            }
        }
    }

    private static void drawColumn(Stage stage, Series series, double offset, double width, Map<Double, Double> tops) {
        Graphics2D graphics = stage.graphics();
        Color colour = stage.look().tone(series.tone());
        boolean stacked = series.style() == Style.STACKED_BARS;
        for (PlotPoint point : series.points()) {
            double base = stacked ? tops.getOrDefault(point.x(), 0.0) : 0;
            double top = base + point.y();
            tops.put(point.x(), top);
            double from = base == 0 ? stage.baseline() : stage.y(base);
            double to = stage.y(top);
            double inset = Math.min(1, width * 0.08);
            double x = stage.x(point.x()) + offset + inset;
            graphics.setPaint(colour);
            graphics.fill(new Rectangle2D.Double(x, Math.min(from, to), width - 2 * inset, Math.abs(to - from)));
            if (stacked && base > 0) {
                graphics.setPaint(stage.look().ground);
                graphics.fill(new Rectangle2D.Double(x, from - SEAM / 2, width - 2 * inset, SEAM));
            }
            if (point.barHalfLength().isPresent()) {
                double middle = stage.xMapping().toValue(x + width / 2 - inset);
                PlotPoint end = new PlotPoint(middle, top, point.barHalfLength());
                graphics.setPaint(stage.look().labelGround);
                graphics.setStroke(Look.CASING_STROKE);
                graphics.draw(SeriesLayer.uncertaintyBars(stage, List.of(end)));
                SeriesLayer.drawUncertainty(stage, List.of(end), stage.look().ink);
            }
        }
    }

    private double groupWidth(Stage stage) {
        List<Double> places = new ArrayList<>();
        for (Series each : series) {
            for (PlotPoint point : each.points()) {
                places.add(stage.x(point.x()));
            }
        }
        places.sort(null);
        double gap = stage.area().getWidth() * LONE_SHARE;
        for (int i = 1; i < places.size(); i++) {
            double distance = places.get(i) - places.get(i - 1);
            gap = distance > 0 ? Math.min(gap, distance) : gap;
        }
        return Math.min(gap * FILL_OF_GAP, WIDEST_GROUP * Math.max(1, series.size()));
    }
}
