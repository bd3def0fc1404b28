// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.BandPoint;
import org.ohmstead.plot.PlotPoint;

/** Draws a band as one translucent area. */
record BandLayer(Band band) implements Layer {
    @Override
    public void draw(Stage stage) {
        if (band.points().size() < 2) {
            return;
        }
        List<PlotPoint> upper = new ArrayList<>();
        List<PlotPoint> lower = new ArrayList<>();
        for (BandPoint point : band.points()) {
            upper.add(new PlotPoint(point.x(), point.upper()));
            lower.add(new PlotPoint(point.x(), point.lower()));
        }
        Path2D outline = Polyline.path(Polyline.of(upper, stage).thinned(stage));
        List<Point2D> back = Polyline.of(lower, stage).thinned(stage);
        for (int i = back.size() - 1; i >= 0; i--) {
            outline.lineTo(back.get(i).getX(), back.get(i).getY());
        }
        outline.closePath();
        Graphics2D graphics = stage.graphics();
        graphics.setPaint(stage.look().bandFill(band.tone()));
        graphics.fill(outline);
    }
}
