// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.Tick;
import org.ohmstead.report.internal.Evidence.Taken;
import org.ohmstead.units.Decibels;

/** Distortion against level, and the harmonics at the end point: one small chart for each mode and load. */
final class LevelCharts {
    private static final double HIGHEST_PERCENT = 30;
    private static final double HEADROOM = 2;
    private static final double LOWEST_RATIO = 1e-7;
    private static final double DECIBEL_STEP = 20;
    private static final double STEM_SPREAD = 0.22;
    private static final double SWEEP_HEIGHT_RATIO = 0.68;
    private static final double WIDE_HEIGHT_RATIO = 0.36;
    private static final double SPECTRUM_HEIGHT_RATIO = 0.76;
    private static final int POWER_DIGITS = 3;

    private final Evidence evidence;
    private final Speech speech;
    private final Tones tones;
    private final ChartBook book;

    LevelCharts(Evidence evidence, ChartBook book) {
        this.evidence = evidence;
        this.speech = evidence.speech();
        this.tones = evidence.tones();
        this.book = book;
    }

    /** Returns a chart of THD_F against output power for each mode and load: a line for each supply voltage. */
    List<Chart> sweeps() {
        List<Chart> charts = new ArrayList<>();
        for (List<Taken> group : groups()) {
            Plot plot = sweepPlot(group);
            if (!plot.series().isEmpty()) {
                charts.add(book.half(plot, SWEEP_HEIGHT_RATIO));
            }
        }
        return charts;
    }

    /** Returns a chart of THD_F against output power for the mode and load of one reading; empty where no levels were recorded. */
    List<Chart> sweep(Taken like) {
        return groups().stream()
                .filter(group -> group.get(0).sameLoad(like))
                .map(this::sweepPlot)
                .filter(plot -> !plot.series().isEmpty())
                .map(plot -> book.whole(plot, WIDE_HEIGHT_RATIO))
                .toList();
    }

    /** Returns a chart of the harmonics at the end point for each mode and load, at its highest supply voltage. */
    List<Chart> spectra() {
        List<Chart> charts = new ArrayList<>();
        List<Taken> shown = groups().stream().map(LevelCharts::highest).toList();
        double lowest = shown.stream()
                .flatMap(taken -> taken.reading().channels().stream())
                .flatMap(channel -> channel.harmonics().stream())
                .mapToDouble(LevelCharts::levelDb)
                .min()
                .orElse(0);
        for (Taken taken : shown) {
            Plot plot = spectrumPlot(taken, DECIBEL_STEP * Math.floor((lowest - 1) / DECIBEL_STEP));
            if (!plot.series().isEmpty()) {
                charts.add(book.third(plot, SPECTRUM_HEIGHT_RATIO));
            }
        }
        return charts;
    }

    private List<List<Taken>> groups() {
        List<List<Taken>> groups = new ArrayList<>();
        for (Taken taken : evidence.standing(PowerKind.CONTINUOUS)) {
            List<Taken> last = groups.isEmpty() ? List.of() : groups.get(groups.size() - 1);
            if (last.isEmpty() || !last.get(0).sameLoad(taken)) {
                last = new ArrayList<>();
                groups.add(last);
            }
            last.add(taken);
        }
        return groups;
    }

    private static Taken highest(List<Taken> group) {
        return group.get(group.size() - 1);
    }

    private Plot sweepPlot(List<Taken> group) {
        Plot plot =
                Plot.of(evidence.cell(group.get(0)), Axis.log(speech.text("axis.output"), "W"), Axis.log("THD_F", "%"));
        Taken highest = highest(group);
        for (int index = group.size() - 1; index >= 0; index--) {
            Taken taken = group.get(index);
            int tone = tones.ofSupply(taken.aimedVolts());
            if (taken.sameCell(highest)) {
                plot = withChannels(plot, taken, tone);
            } else {
                plot = with(
                        plot,
                        speech.volts(taken.aimedVolts()),
                        points(taken.reading().weakestChannel()),
                        Style.LINE_AND_MARKERS,
                        tone);
            }
        }
        return withRange(withLimit(plot, highest.reading()));
    }

    private Plot withChannels(Plot plot, Taken taken, int tone) {
        Plot changed = plot;
        Style style = Style.LINE_AND_MARKERS;
        String volts = speech.volts(taken.aimedVolts()) + " ";
        for (ChannelReading channel : taken.reading().channels()) {
            String name = volts + PlainText.clean(channel.channel());
            changed = with(changed, name, points(channel), style, tone);
            style = Style.DASHED_LINE;
            volts = "";
        }
        return changed;
    }

    private static Plot with(Plot plot, String name, List<PlotPoint> points, Style style, int tone) {
        return points.isEmpty() ? plot : plot.withSeries(new Series(name, points, style, tone));
    }

    private static List<PlotPoint> points(ChannelReading channel) {
        List<PlotPoint> points = new ArrayList<>();
        for (SweepPoint point : channel.sweep()) {
            double percent = point.thdFRatio() * 100;
            if (point.powerWatts() > 0 && percent > 0 && percent <= HIGHEST_PERCENT) {
                points.add(new PlotPoint(point.powerWatts(), percent));
            }
        }
        return points;
    }

    /** Draws the limit, and the place where the weakest channel crosses it at the highest supply voltage. */
    private Plot withLimit(Plot plot, Reading reading) {
        if (!(reading.endPoint() instanceof EndPoint.DistortionLimit limit)
                || limit.measure() != DistortionMeasure.THD_F
                || limit.ratio() * 100 >= HIGHEST_PERCENT) {
            return plot;
        }
        double percent = limit.ratio() * 100;
        Plot changed = plot.withMark(Mark.horizontal(percent, speech.of(reading.endPoint())));
        ChannelReading weakest = reading.weakestChannel();
        if (plot.series().isEmpty() || !Evidence.reached(weakest) || !(weakest.powerWatts() > 0)) {
            return changed;
        }
        String power = speech.significant(weakest.powerWatts(), POWER_DIGITS) + "\u00a0W";
        return changed.withMark(Mark.point(weakest.powerWatts(), percent, power, MarkerShape.HOLLOW_CIRCLE));
    }

    /** Ends the axis above the data and the limit, so that small distortion is not squeezed by room for large. */
    private static Plot withRange(Plot plot) {
        double highest = Stream.concat(
                        plot.series().stream()
                                .flatMap(series -> series.points().stream())
                                .map(PlotPoint::y),
                        plot.marks().stream()
                                .filter(Mark.HorizontalLine.class::isInstance)
                                .map(mark -> ((Mark.HorizontalLine) mark).y()))
                .max(Comparator.naturalOrder())
                .orElse(1.0);
        return plot.withAxes(plot.x(), plot.y().withUpper(highest * HEADROOM));
    }

    private static List<Tick> decibelTicks(double bottomDb) {
        List<Tick> ticks = new ArrayList<>();
        for (double level = 0; level >= bottomDb; level -= 2 * DECIBEL_STEP) {
            ticks.add(new Tick(level, Figures.fixed(level, 0)));
        }
        return ticks;
    }

    private static double levelDb(HarmonicFigure harmonic) {
        return Decibels.ofFieldRatio(Math.max(harmonic.ratioToFundamental(), LOWEST_RATIO));
    }

    private Plot spectrumPlot(Taken taken, double bottomDb) {
        Reading reading = taken.reading();
        String title = evidence.cell(taken) + ", " + speech.volts(taken.aimedVolts());
        Plot plot = Plot.of(
                title,
                Axis.linear(speech.text("axis.harmonic"), ""),
                Axis.linear(speech.text("axis.reFundamental"), ""));
        int count = reading.channels().size();
        int highestOrder = 2;
        for (int index = 0; index < count; index++) {
            ChannelReading channel = reading.channels().get(index);
            double shift = STEM_SPREAD * (index - (count - 1) / 2.0);
            List<PlotPoint> points = new ArrayList<>();
            for (HarmonicFigure harmonic : channel.harmonics()) {
                highestOrder = Math.max(highestOrder, harmonic.order());
                points.add(new PlotPoint(harmonic.order() + shift, levelDb(harmonic)));
            }
            plot = with(plot, PlainText.clean(channel.channel()), points, Style.STEMS, index % Palette.TONES);
        }
        return plot.withAxes(
                plot.x().withRange(1.4, highestOrder + 0.6),
                plot.y().withRange(bottomDb, 0).withTicks(decibelTicks(bottomDb)));
    }
}
