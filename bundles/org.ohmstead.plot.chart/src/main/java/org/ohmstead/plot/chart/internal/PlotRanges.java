// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.BandPoint;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** The ranges of both axes of a plot: fixed where the plot fixes them, else such that all of its parts are seen. */
final class PlotRanges {
    private static final double MARKER_MARGIN = 0.03;
    private static final double VALUE_MARGIN = 0.03;

    private final AxisRange.Ends x;
    private final AxisRange.Ends y;

    PlotRanges(Plot plot) {
        AxisRange xRange = new AxisRange(plot.x());
        AxisRange yRange = new AxisRange(plot.y());
        Map<Double, Double> stackTops = new HashMap<>();
        for (Series series : plot.series()) {
            include(series, xRange, yRange, stackTops);
        }
        for (Band band : plot.bands()) {
            for (BandPoint point : band.points()) {
                xRange.include(point.x());
                yRange.include(point.lower());
                yRange.include(point.upper());
            }
        }
        for (Mark mark : plot.marks()) {
            include(mark, xRange, yRange);
        }
        List<Series> bars =
                plot.series().stream().filter(each -> each.style().hasBars()).toList();
        if (!bars.isEmpty()) {
            double half = halfGap(bars);
            for (Series series : bars) {
                for (PlotPoint point : series.points()) {
                    xRange.include(point.x() - half);
                    xRange.include(point.x() + half);
                }
            }
        }
        boolean markers = plot.series().stream().anyMatch(each -> each.style().hasMarkers())
                || plot.marks().stream().anyMatch(mark -> !(mark instanceof Mark.HorizontalLine));
        x = xRange.ends(markers && bars.isEmpty() ? MARKER_MARGIN : 0, false);
        y = yRange.ends(VALUE_MARGIN, true);
    }

    AxisRange.Ends x() {
        return x;
    }

    AxisRange.Ends y() {
        return y;
    }

    private static void include(Series series, AxisRange x, AxisRange y, Map<Double, Double> stackTops) {
        boolean stacked = series.style() == Style.STACKED_BARS;
        for (PlotPoint point : series.points()) {
            double top = stacked ? stackTops.merge(point.x(), point.y(), Double::sum) : point.y();
            double half = point.barHalfLength().orElse(0);
            x.include(point.x());
            y.include(top);
            y.include(top - half);
            y.include(top + half);
            if (series.style().hasBars() || series.style() == Style.FILLED) {
                y.include(0);
            }
        }
    }

    private static void include(Mark mark, AxisRange x, AxisRange y) {
        if (mark instanceof Mark.VerticalLine line) {
            x.include(line.x());
        } else if (mark instanceof Mark.HorizontalLine line) {
            y.include(line.y());
        } else if (mark instanceof Mark.Point point) {
            x.include(point.x());
            y.include(point.y());
        }
    }

    private static double halfGap(List<Series> bars) {
        TreeSet<Double> places = new TreeSet<>();
        bars.forEach(series -> series.points().forEach(point -> places.add(point.x())));
        double gap = Double.POSITIVE_INFINITY;
        Double before = null;
        for (Double place : places) {
            gap = before == null ? gap : Math.min(gap, place - before);
            before = place;
        }
        return Double.isFinite(gap) ? gap / 2 : 0.5;
    }
}
