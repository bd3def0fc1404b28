// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.ohmstead.history.internal.TimeTicks;
import org.ohmstead.history.internal.Words;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.Tick;
import org.ohmstead.units.text.Messages;

/** Comparisons and trends as plots. */
public final class HistoryPlots {
    private static final Messages TEXTS = Messages.of(HistoryPlots.class);
    private static final double DAYS_PER_YEAR = 365.25;
    private static final int SECOND_TONE = 1;

    private HistoryPlots() {}

    /** Returns the powers of a comparison beside each other, with the intervals of its confidence; empty when there are none. */
    public static Optional<Plot> powers(Comparison comparison) {
        if (comparison.powers().isEmpty()) {
            return Optional.empty();
        }
        double confidence = comparison.request().confidence();
        Axis x = names(comparison.powers().stream().map(SubjectPower::subject).toList());
        Series series =
                new Series("", points(comparison.powers(), SubjectPower::watts, confidence, 0), Style.MARKERS, 0);
        return Optional.of(Plot.of(
                        TEXTS.text("plot.powers", comparison.request().words()),
                        x,
                        Axis.linear(TEXTS.text("plot.power"), "W").withLower(0))
                .withSeries(series)
                .withNote(TEXTS.text(
                        "plot.powers.note",
                        comparison.ground().map(Comparison.Ground::words).orElse(""),
                        Words.percent(confidence))));
    }

    /**
     * Returns what a watt costs beside each other, and the same in the money of the base period where it was brought to it; empty without
     * a price.
     *
     * @param prices of one currency
     * @param confidence of the bars, strictly between 0 and 1
     * @throws IllegalArgumentException when the currencies differ
     */
    public static Optional<Plot> prices(List<PricePerWatt> prices, double confidence) {
        if (prices.isEmpty()) {
            return Optional.empty();
        }
        String currency = prices.get(0).price().currency();
        if (prices.stream().anyMatch(each -> !each.price().currency().equals(currency))) {
            throw new IllegalArgumentException("prices are in several currencies; they must all be in " + currency);
        }
        Axis x = names(prices.stream().map(each -> each.power().subject()).toList());
        boolean adjusted =
                prices.stream().allMatch(each -> each.adjustedPerWatt().isPresent());
        Plot plot = Plot.of(
                        TEXTS.text("plot.price"),
                        x,
                        Axis.linear(TEXTS.text("plot.price"), currency + "/W").withLower(0))
                .withSeries(new Series(
                        adjusted ? TEXTS.text("plot.price.paid") : "",
                        points(prices, PricePerWatt::perWatt, confidence, adjusted ? -0.1 : 0),
                        Style.MARKERS,
                        0));
        if (adjusted) {
            plot = plot.withSeries(new Series(
                    TEXTS.text("plot.price.base", prices.get(0).base().orElse("")),
                    points(prices, each -> each.adjustedPerWatt().orElseThrow(), confidence, 0.1),
                    Style.MARKERS,
                    SECOND_TONE));
        }
        return Optional.of(plot.withNote(TEXTS.text("plot.price.note", Words.percent(confidence))));
    }

    private static Axis names(List<Subject> subjects) {
        List<Tick> ticks = new ArrayList<>();
        for (int i = 0; i < subjects.size(); i++) {
            ticks.add(new Tick(i + 1.0, subjects.get(i).name()));
        }
        return Axis.linear(TEXTS.text("plot.amplifier"), "")
                .withRange(0.5, subjects.size() + 0.5)
                .withTicks(ticks);
    }

    private static <T> List<PlotPoint> points(
            List<T> things, Function<T, Estimate> value, double confidence, double aside) {
        List<PlotPoint> points = new ArrayList<>();
        for (int i = 0; i < things.size(); i++) {
            Estimate estimate = value.apply(things.get(i));
            points.add(new PlotPoint(i + 1 + aside, estimate.value(), estimate.expandedUncertainty(confidence)));
        }
        return points;
    }

    /** Returns the values over time, with bars of twice the standard uncertainty, and the line through them; empty without values. */
    public static Optional<Plot> trend(Trend trend) {
        if (trend.points().isEmpty()) {
            return Optional.empty();
        }
        List<PlotPoint> points = new ArrayList<>();
        for (TrendPoint point : trend.points()) {
            double x = TimeTicks.place(point.takenAt());
            points.add(
                    point.standardUncertainty().isPresent()
                            ? new PlotPoint(
                                    x,
                                    point.value(),
                                    2 * point.standardUncertainty().getAsDouble())
                            : new PlotPoint(x, point.value()));
        }
        Instant first = trend.points().get(0).takenAt();
        Instant last = trend.points().get(trend.points().size() - 1).takenAt();
        Plot plot = Plot.of(
                        trend.line().words(),
                        TimeTicks.axis(first, last),
                        Axis.linear(trend.line().figureId(), trend.line().unit()))
                .withSeries(new Series(TEXTS.text("trend.values"), points, Style.MARKERS, 0));
        if (trend.drift().isPresent()) {
            plot = plot.withSeries(line(trend, points));
        }
        return Optional.of(plot.withNote(trend.sentence()));
    }

    /** The straight line goes through the mean of the times and of the values. */
    private static Series line(Trend trend, List<PlotPoint> points) {
        double perDay =
                trend.drift().orElseThrow().slope().value() / (trend.timeUnit().equals("year") ? DAYS_PER_YEAR : 1);
        double meanX = points.stream().mapToDouble(PlotPoint::x).average().orElseThrow();
        double meanY = points.stream().mapToDouble(PlotPoint::y).average().orElseThrow();
        double first = points.get(0).x();
        double last = points.get(points.size() - 1).x();
        return Series.of(
                TEXTS.text("trend.straight"),
                new double[] {first, last},
                new double[] {meanY + perDay * (first - meanX), meanY + perDay * (last - meanX)},
                Style.LINE,
                SECOND_TONE);
    }
}
