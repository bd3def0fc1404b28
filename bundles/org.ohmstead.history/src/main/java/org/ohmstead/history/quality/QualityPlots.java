// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.ohmstead.metrology.quality.CheckStandardReview;
import org.ohmstead.metrology.quality.ControlLimits;
import org.ohmstead.metrology.quality.IndividualsChart;
import org.ohmstead.metrology.quality.RunSignal;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.units.text.Messages;

/** The control charts of a check standard as plots; points count values from 1, the oldest first. */
public final class QualityPlots {
    private static final Messages TEXTS = Messages.of(QualityPlots.class);
    private static final int LINE = 0;
    private static final int ALARM = 1;

    private QualityPlots() {}

    /**
     * Returns the chart of the values with its limits, the points of each signal marked and the reference as a line; empty as long as the
     * baseline is not complete.
     */
    public static Optional<Plot> individuals(QualityReview review) {
        return review.review().map(charts -> {
            double[] values = values(review);
            Plot plot = withLimits(
                    Plot.of(
                            review.standard().name(),
                            count(),
                            Axis.linear(
                                    TEXTS.text("chart.value"), review.standard().unit())),
                    charts.chart().readings(),
                    true);
            plot = plot.withSeries(Series.of(
                    TEXTS.text("chart.values"), places(0, values.length), values, Style.LINE_AND_MARKERS, LINE));
            TreeSet<Integer> signalled = new TreeSet<>();
            for (RunSignal signal : charts.signals()) {
                for (int i = signal.firstIndex(); i <= signal.lastIndex(); i++) {
                    signalled.add(i);
                }
            }
            for (int index : signalled) {
                plot = plot.withMark(Mark.point(index + 1, values[index], "", MarkerShape.HOLLOW_CIRCLE, ALARM));
            }
            if (review.standard().referenceValue().isPresent()) {
                plot = plot.withMark(Mark.horizontal(
                        review.standard().referenceValue().getAsDouble(), TEXTS.text("chart.reference")));
            }
            return withBaselineEnd(plot, charts, values.length).withNote(note(charts, signalled.size()));
        });
    }

    /** Returns the chart of the moving ranges, those above the limit marked; empty as long as the baseline is not complete. */
    public static Optional<Plot> movingRanges(QualityReview review) {
        return review.review().map(charts -> {
            double[] values = values(review);
            double[] ranges = IndividualsChart.movingRanges(values);
            Plot plot = withLimits(
                    Plot.of(
                            review.standard().name(),
                            count(),
                            Axis.linear(
                                            TEXTS.text("chart.range"),
                                            review.standard().unit())
                                    .withLower(0)),
                    charts.chart().ranges(),
                    false);
            plot = plot.withSeries(Series.of(
                    TEXTS.text("chart.ranges"), places(1, ranges.length), ranges, Style.LINE_AND_MARKERS, LINE));
            for (int index : charts.chart().jumps(values)) {
                plot = plot.withMark(Mark.point(index + 1, ranges[index - 1], "", MarkerShape.HOLLOW_CIRCLE, ALARM));
            }
            return withBaselineEnd(plot, charts, values.length);
        });
    }

    private static Axis count() {
        return Axis.linear(TEXTS.text("chart.number"), "");
    }

    private static double[] values(QualityReview review) {
        return review.values().own().stream().mapToDouble(CheckValue::value).toArray();
    }

    private static double[] places(int before, int count) {
        double[] places = new double[count];
        for (int i = 0; i < count; i++) {
            places[i] = before + i + 1.0;
        }
        return places;
    }

    private static Plot withLimits(Plot plot, ControlLimits limits, boolean withLower) {
        List<Mark> marks = new ArrayList<>();
        marks.add(Mark.horizontal(limits.upper(), TEXTS.text("chart.upper")));
        marks.add(Mark.horizontal(limits.centre(), TEXTS.text("chart.mean")));
        if (withLower) {
            marks.add(Mark.horizontal(limits.lower(), TEXTS.text("chart.lower")));
        }
        Plot more = plot;
        for (Mark mark : marks) {
            more = more.withMark(mark);
        }
        return more;
    }

    private static Plot withBaselineEnd(Plot plot, CheckStandardReview charts, int count) {
        int baseline = charts.chart().baselineCount();
        return baseline < count ? plot.withMark(Mark.vertical(baseline + 0.5, TEXTS.text("chart.baseline"))) : plot;
    }

    private static String note(CheckStandardReview charts, int signalled) {
        return TEXTS.text(
                signalled == 0 ? "chart.note.none" : "chart.note.some",
                Integer.toString(charts.chart().baselineCount()));
    }
}
