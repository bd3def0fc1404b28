// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.history.quality.CheckValue;
import org.ohmstead.history.quality.QualityPlots;
import org.ohmstead.history.quality.QualityReview;
import org.ohmstead.metrology.quality.CheckStandardReview;
import org.ohmstead.metrology.quality.DriftLine;
import org.ohmstead.metrology.quality.IndividualsChart;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.units.text.Messages;

/** The two control charts of a check standard: its values, and the distances between successive ones. */
final class ControlPlot {
    private static final Messages TEXTS = Messages.of(ControlPlot.class);

    private static final int VALUE_TONE = 0;
    private static final int DRIFT_TONE = 2;
    private static final double HALF = 0.5;

    private ControlPlot() {}

    /** Returns what the straight line through all values is called. */
    static String drift() {
        return TEXTS.text("chart.drift");
    }

    /** Returns the chart of values with its limits and the drift line; without enough values, these alone. */
    static Plot values(QualityReview review) {
        double[] values = values(review.values().own());
        Plot plot = QualityPlots.individuals(review)
                .orElseGet(() -> plain(review, TEXTS.text("chart.value"), TEXTS.text("chart.values"), 1, values))
                .withTitle("")
                .withNote("");
        plot = spread(plot, values.length);
        return review.review()
                .flatMap(CheckStandardReview::drift)
                .map(drift -> driftLine(review, drift))
                .map(plot::withSeries)
                .orElse(plot);
    }

    /** Returns the chart of moving ranges with its limit; without enough values, these alone. */
    static Plot ranges(QualityReview review) {
        double[] values = values(review.values().own());
        Plot plot = QualityPlots.movingRanges(review)
                .orElseGet(
                        () -> plain(review, TEXTS.text("chart.range"), "", 2, IndividualsChart.movingRanges(values)));
        Axis own =
                Axis.linear(TEXTS.text("chart.range"), review.standard().unit()).withLower(0);
        return spread(withoutNames(plot).withAxes(plot.x(), own).withTitle("").withNote(""), values.length);
    }

    /** The axis says what the only line is; a legend would take the room that the chart needs. */
    private static Plot withoutNames(Plot plot) {
        List<Series> unnamed = plot.series().stream()
                .map(each -> new Series("", each.points(), each.style(), each.tone()))
                .toList();
        return new Plot(plot.title(), plot.x(), plot.y(), unnamed, plot.bands(), plot.marks(), plot.note());
    }

    /** Returns when a value was taken, in days since the first. */
    private static double day(QualityReview review, int index) {
        List<CheckValue> own = review.values().own();
        Duration since = Duration.between(own.get(0).takenAt(), own.get(index).takenAt());
        return since.toMillis() / (double) Duration.ofDays(1).toMillis();
    }

    private static double[] values(List<CheckValue> values) {
        return values.stream().mapToDouble(CheckValue::value).toArray();
    }

    private static Plot plain(QualityReview review, String label, String name, int first, double[] ys) {
        double[] xs = new double[ys.length];
        for (int index = 0; index < xs.length; index++) {
            xs[index] = (double) first + index;
        }
        return Plot.of(
                        "",
                        Axis.linear(TEXTS.text("chart.value"), ""),
                        Axis.linear(label, review.standard().unit()))
                .withSeries(Series.of(name, xs, ys, Style.LINE_AND_MARKERS, VALUE_TONE));
    }

    /** Both charts count the values along the same axis, so that one stands above the other. */
    private static Plot spread(Plot plot, int count) {
        return plot.withAxes(
                Axis.linear(TEXTS.text("chart.number"), "").withRange(HALF, Math.max(2, count) + HALF), plot.y());
    }

    /** The least-squares line goes through the mean of the days and of the values. */
    private static Series driftLine(QualityReview review, DriftLine drift) {
        int count = review.values().own().size();
        double meanDay = 0;
        double meanValue = 0;
        for (int index = 0; index < count; index++) {
            meanDay += day(review, index) / count;
            meanValue += review.values().own().get(index).value() / count;
        }
        List<Double> xs = new ArrayList<>();
        List<Double> ys = new ArrayList<>();
        for (int index = 0; index < count; index++) {
            xs.add(index + 1.0);
            ys.add(meanValue + drift.slope().value() * (day(review, index) - meanDay));
        }
        return Series.of(drift(), array(xs), array(ys), Style.DASHED_LINE, DRIFT_TONE);
    }

    private static double[] array(List<Double> numbers) {
        return numbers.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
