// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.ohmstead.model.Step;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.BandPoint;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** The chart of a forecast: the temperatures over the time of the schedule, with the limits that they keep below. */
final class ForecastPlot {
    private static final Messages TEXTS = Messages.of(ForecastPlot.class);

    /** How many load parts are drawn: those with the least room. */
    static final int MOST_LOADS = 3;

    private static final double LEAST_BAND_KELVIN = 1;
    private static final double ROUND_KELVIN = 10;
    private static final double HEADROOM_RATIO = 1.04;
    private static final double MINUTE = 60;
    private static final int[] LOAD_TONES = {3, 4, 7};
    private static final int CASE_TONE = 0;
    private static final int DEVICE_TONE = 1;
    private static final int CABLE_TONE = 6;

    private final Forecast forecast;
    private final double marginKelvin;
    private final double lastMinutes;
    private final double upperCelsius;
    private final Set<Double> limitsDrawn = new HashSet<>();
    private final Set<String> above = new LinkedHashSet<>();
    private Plot plot;

    private ForecastPlot(Forecast forecast, OptionalDouble upperMinutes) {
        this.forecast = forecast;
        marginKelvin = forecast.project().heat().pacing().marginKelvin();
        lastMinutes = forecast.course().orElseThrow().totalSeconds() / MINUTE;
        upperCelsius = upperCelsius();
        Axis time = Axis.linear(TEXTS.text("plot.time"), "min").withLower(0);
        plot = Plot.of(
                "",
                upperMinutes.isPresent() ? time.withUpper(upperMinutes.getAsDouble()) : time,
                Axis.linear(TEXTS.text("plot.temperature"), "\u00b0C").withUpper(upperCelsius));
    }

    /** As high as all temperatures, and all limits that are not much farther above their place than it is above the air. */
    private double upperCelsius() {
        double highest = 0;
        for (ForecastTrace trace : chosen()) {
            highest = Math.max(highest, highest(trace));
        }
        for (ForecastTrace trace : chosen()) {
            double limit = trace.place().limitCelsius().orElse(0);
            double rise = highest(trace) - trace.samples().get(0).lowCelsius();
            if (limit - highest(trace) <= rise) {
                highest = Math.max(highest, limit);
            }
        }
        return ROUND_KELVIN * Math.ceil(HEADROOM_RATIO * highest / ROUND_KELVIN);
    }

    private static double highest(ForecastTrace trace) {
        return trace.samples().stream()
                .mapToDouble(ForecastTrace.Sample::highCelsius)
                .max()
                .orElse(0);
    }

    private static String name(ForecastPlace place) {
        return place.kind() == ForecastPlace.Kind.LOAD
                ? place.heading()
                : place.kind().title();
    }

    /**
     * Returns the chart of a forecast of at least one step.
     *
     * @param upperMinutes the end of the time axis; empty to let the schedule decide
     */
    static Plot of(Forecast forecast, OptionalDouble upperMinutes) {
        // What is drawn goes into saved pictures and tables too.
        return Numbers.withPoint(() -> new ForecastPlot(forecast, upperMinutes).draw());
    }

    private Plot draw() {
        List<ForecastTrace> traces = chosen();
        int loads = 0;
        for (ForecastTrace trace : traces) {
            int tone = trace.place().kind() == ForecastPlace.Kind.LOAD ? LOAD_TONES[loads] : tone(trace.place());
            loads += trace.place().kind() == ForecastPlace.Kind.LOAD ? 1 : 0;
            trace(trace, tone);
            limit(trace.place(), tone);
        }
        measured();
        return above.isEmpty()
                ? plot
                : plot.withMark(Mark.horizontal(upperCelsius, TEXTS.text("plot.above", String.join(", ", above))));
    }

    /** Case and devices, the load parts with the least room, the cable. */
    private List<ForecastTrace> chosen() {
        List<ForecastTrace> loads = forecast.traces().stream()
                .filter(trace -> trace.place().kind() == ForecastPlace.Kind.LOAD)
                .sorted(Comparator.comparingDouble(ForecastPlot::room))
                .limit(MOST_LOADS)
                .toList();
        List<ForecastTrace> chosen = new ArrayList<>(forecast.traces());
        chosen.removeIf(trace -> trace.place().kind() == ForecastPlace.Kind.LOAD && !loads.contains(trace));
        // By name, so that a part keeps its colour in another order of the steps.
        chosen.sort(Comparator.comparing((ForecastTrace trace) -> trace.place().kind())
                .thenComparing(trace -> trace.place().name()));
        return chosen;
    }

    private static double room(ForecastTrace trace) {
        return trace.place().limitCelsius().orElse(Double.POSITIVE_INFINITY) - highest(trace);
    }

    private static int tone(ForecastPlace place) {
        return switch (place.kind()) {
            case CASE -> CASE_TONE;
            case DEVICE -> DEVICE_TONE;
            case CABLE -> CABLE_TONE;
            case LOAD -> LOAD_TONES[0];
        };
    }

    private void trace(ForecastTrace trace, int tone) {
        List<PlotPoint> line = new ArrayList<>();
        List<BandPoint> band = new ArrayList<>();
        boolean wide = trace.place().points().size() > 1;
        for (ForecastTrace.Sample sample : trace.samples()) {
            double minutes = sample.seconds() / MINUTE;
            line.add(new PlotPoint(minutes, sample.likelyCelsius()));
            band.add(new BandPoint(minutes, sample.lowCelsius(), sample.highCelsius()));
            wide |= sample.highCelsius() > sample.lowCelsius() + LEAST_BAND_KELVIN;
        }
        String name = name(trace.place());
        // One name lets its toggle in the legend hide both.
        plot = plot.withSeries(new Series(name, line, Style.LINE, tone));
        if (wide) {
            plot = plot.withBand(new Band(name, band, tone));
        }
    }

    /** The limit itself as a line, and dashed what the schedule keeps to; limits that are alike are drawn once. */
    private void limit(ForecastPlace place, int tone) {
        if (place.limitCelsius().isEmpty()) {
            return;
        }
        double celsius = place.limitCelsius().getAsDouble();
        String limit = TEXTS.text("plot.limit." + place.kind().name(), Numbers.format("%.0f", celsius));
        if (celsius > upperCelsius) {
            above.add(limit);
            return;
        }
        if (!limitsDrawn.add(celsius)) {
            return;
        }
        String text = marginKelvin > 0 ? TEXTS.text("plot.less", limit, Numbers.shown(marginKelvin)) : limit;
        plot = plot.withMark(new Mark.HorizontalLine(celsius - marginKelvin, text, OptionalInt.of(tone)));
        if (marginKelvin > 0) {
            // From right to left, so that the crosshair does not read it out among the temperatures.
            List<PlotPoint> ends = List.of(new PlotPoint(lastMinutes, celsius), new PlotPoint(0, celsius));
            plot = plot.withSeries(new Series("", ends, Style.LINE, tone));
        }
    }

    /** What the log has of the case's temperature, at the end of each step as it is planned here. */
    private void measured() {
        List<PlotPoint> points = new ArrayList<>();
        forecast.course().orElseThrow().jobs().forEach(job -> {
            OptionalDouble celsius =
                    forecast.project().step(job.id()).map(this::caseCelsius).orElse(OptionalDouble.empty());
            celsius.ifPresent(value -> points.add(new PlotPoint(job.endSeconds() / MINUTE, value)));
        });
        if (!points.isEmpty()) {
            plot = plot.withSeries(new Series(TEXTS.text("plot.measured"), points, Style.MARKERS, CASE_TONE));
        }
    }

    private OptionalDouble caseCelsius(Step step) {
        return forecast.readings()
                .latest(step)
                .map(reading -> reading.conditions().caseCelsius())
                .orElse(OptionalDouble.empty());
    }
}
