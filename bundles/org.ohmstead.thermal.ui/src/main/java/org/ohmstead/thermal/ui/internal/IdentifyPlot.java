// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.thermal.HeatFit;
import org.ohmstead.thermal.HeatReading;
import org.ohmstead.units.text.Messages;

/** The readings with the curve through them, and what is left between the two. */
final class IdentifyPlot {
    private static final Messages TEXTS = Messages.of(IdentifyPlot.class);
    private static final double LONG_SECONDS = 600;
    private static final double MINUTE = 60;

    private IdentifyPlot() {}

    /** Returns the readings and, when one fits, the curve. */
    static Plot readings(IdentifyAnswer answer) {
        double unit = unit(answer);
        List<PlotPoint> points = answer.readings().stream()
                .map(reading -> new PlotPoint(reading.seconds() / unit, reading.celsius()))
                .toList();
        Plot plot = Plot.of("", time(unit), Axis.linear(TEXTS.text("plot.temperature"), "\u00b0C"))
                .withSeries(new Series(TEXTS.text("plot.readings"), points, Style.MARKERS, 0));
        Optional<HeatFit.Found> found = answer.found();
        return found.isEmpty()
                ? plot
                : plot.withSeries(new Series(
                        TEXTS.text("plot.fit"),
                        points(found.get(), HeatFit.Residual::fittedCelsius, unit),
                        Style.LINE,
                        1));
    }

    /** Returns reading less curve over time. */
    static Plot residuals(IdentifyAnswer answer, HeatFit.Found found) {
        double unit = unit(answer);
        return Plot.of("", time(unit), Axis.linear(TEXTS.text("plot.residual"), "K"))
                .withSeries(new Series("", points(found, HeatFit.Residual::kelvin, unit), Style.MARKERS, 0))
                .withMark(Mark.horizontal(0, ""));
    }

    private static double unit(IdentifyAnswer answer) {
        double last = answer.readings().stream()
                .mapToDouble(HeatReading::seconds)
                .max()
                .orElse(0);
        return last > LONG_SECONDS ? MINUTE : 1;
    }

    private static Axis time(double unit) {
        return Axis.linear(TEXTS.text("plot.time"), unit == 1 ? "s" : "min");
    }

    private static List<PlotPoint> points(HeatFit.Found found, ToDoubleFunction<HeatFit.Residual> figure, double unit) {
        return found.residuals().stream()
                .map(residual -> new PlotPoint(residual.seconds() / unit, figure.applyAsDouble(residual)))
                .toList();
    }
}
