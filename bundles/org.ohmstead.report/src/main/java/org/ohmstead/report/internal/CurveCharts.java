// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.PowerPoint;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Rating;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.BandPoint;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** Power against supply volts: readings with their bars, fitted curves with their bands, ratings at their own voltage. */
final class CurveCharts {
    private static final int STEPS = 48;
    private static final double SAME_LOAD_RATIO = 0.05;
    private static final double WHOLE_HEIGHT_RATIO = 0.42;
    private static final double HALF_HEIGHT_RATIO = 0.66;

    private final Evidence evidence;
    private final Speech speech;
    private final Tones tones;
    private final List<RatingResult> ratings;
    private final ChartBook book;

    CurveCharts(Evidence evidence, List<RatingResult> ratings, ChartBook book) {
        this.evidence = evidence;
        this.speech = evidence.speech();
        this.tones = evidence.tones();
        this.ratings = ratings;
        this.book = book;
    }

    /** Returns the charts in rows: the first across the whole width, the others two in a row as far as they go. */
    List<List<Chart>> rows(List<CurveGroup> groups) {
        List<Plot> plots = groups.stream()
                .filter(CurveGroup::spansVoltages)
                .map(this::plot)
                .toList();
        List<List<Chart>> rows = new ArrayList<>();
        int index = 0;
        while (index < plots.size()) {
            if (index > 0 && index + 1 < plots.size()) {
                rows.add(List.of(
                        book.half(plots.get(index), HALF_HEIGHT_RATIO),
                        book.half(plots.get(index + 1), HALF_HEIGHT_RATIO)));
                index += 2;
            } else {
                rows.add(List.of(book.whole(plots.get(index), WHOLE_HEIGHT_RATIO)));
                index++;
            }
        }
        return rows;
    }

    /** Returns one chart's content. */
    Plot plot(CurveGroup group) {
        Plot plot = Plot.of(
                group.title(speech),
                Axis.linear(speech.text("axis.supply"), "V"),
                Axis.linear(speech.perWhat(group.mode()), "W").withLower(0));
        for (LoadCurve curve : group.curves()) {
            plot = withCurve(plot, curve, tones.ofLoad(curve.nominalLoadOhms()), group);
        }
        return plot;
    }

    private Plot withCurve(Plot plot, LoadCurve curve, int tone, CurveGroup group) {
        List<Rating> own = ratings.stream()
                .map(RatingResult::rating)
                .filter(rating -> rates(rating, curve))
                .toList();
        double lower = CurveGroup.lowestVolts(curve);
        double upper = CurveGroup.highestVolts(curve);
        for (Rating rating : own) {
            lower = Math.min(lower, rating.supplyVolts());
            upper = Math.max(upper, rating.supplyVolts());
        }
        String channel = group.channels() > 1 ? ", " + PlainText.clean(curve.channel()) : "";
        Plot changed = plot;
        if (upper > lower) {
            changed = withLine(changed, curve, lower, upper, tone);
        }
        changed = changed.withSeries(
                new Series(speech.ohms(curve.nominalLoadOhms()) + channel, points(curve), Style.MARKERS, tone));
        for (Rating rating : own) {
            String text = speech.brief(rating.powerWatts(), 4) + "\u00a0W";
            changed = changed.withMark(
                    Mark.point(rating.supplyVolts(), rating.powerWatts(), text, MarkerShape.HOLLOW_DIAMOND, tone));
        }
        return changed;
    }

    private static boolean rates(Rating rating, LoadCurve curve) {
        return rating.kind() == curve.kind()
                && rating.mode() == curve.mode()
                && Math.abs(rating.loadOhms() - curve.nominalLoadOhms()) < SAME_LOAD_RATIO * rating.loadOhms();
    }

    private List<PlotPoint> points(LoadCurve curve) {
        List<PlotPoint> points = new ArrayList<>();
        for (PowerPoint point : curve.points()) {
            double half = evidence.expanded(curve.totalStandardUncertaintyWatts(point));
            points.add(new PlotPoint(point.supplyVolts(), point.powerWatts(), OptionalDouble.of(half)));
        }
        return points;
    }

    private Plot withLine(Plot plot, LoadCurve curve, double lower, double upper, int tone) {
        List<PlotPoint> line = new ArrayList<>();
        List<BandPoint> edges = new ArrayList<>();
        for (int step = 0; step <= STEPS; step++) {
            double volts = lower + (upper - lower) * step / STEPS;
            Estimate power = curve.powerAt(volts);
            double half = power.expandedUncertainty(evidence.confidence());
            line.add(new PlotPoint(volts, power.value()));
            edges.add(new BandPoint(volts, Math.max(0, power.value() - half), power.value() + half));
        }
        return plot.withBand(new Band("", edges, tone)).withSeries(new Series("", line, Style.LINE, tone));
    }
}
