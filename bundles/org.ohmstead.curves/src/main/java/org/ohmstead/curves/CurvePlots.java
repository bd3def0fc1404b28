// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Rating;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.BandPoint;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** The pieces of a plot of power in watts against supply volts: the readings of a curve, the fitted line, its band. */
public final class CurvePlots {
    /** How many pieces a line is drawn in. */
    private static final int STEPS = 48;

    private CurvePlots() {}

    /** A stretch of supply volts, {@code lowerVolts} not above {@code upperVolts}. */
    public record VoltsRange(double lowerVolts, double upperVolts) {
        /** Checks that both ends are above 0 and in order. */
        public VoltsRange {
            if (!(lowerVolts > 0) || !(upperVolts >= lowerVolts) || Double.isInfinite(upperVolts)) {
                throw new IllegalArgumentException("the range is " + lowerVolts + " to " + upperVolts
                        + "; both ends must be finite and above 0, the lower one first");
            }
        }
    }

    /** Returns the supply volts that a curve's readings span, widened to the supply volts of the ratings. */
    public static VoltsRange range(LoadCurve curve, List<Rating> ratings) {
        double lower = curve.curve().lowestSupplyVolts();
        double upper = curve.curve().highestSupplyVolts();
        for (Rating rating : ratings) {
            lower = Math.min(lower, rating.supplyVolts());
            upper = Math.max(upper, rating.supplyVolts());
        }
        return new VoltsRange(lower, upper);
    }

    /**
     * Returns the readings of a curve as markers, each with a bar of its whole expanded uncertainty (normal distribution). The points
     * are in the order of {@link LoadCurve#points()}; their power is that into the nominal load.
     *
     * @param name for the legend
     * @param confidence coverage of the bars, strictly between 0 and 1
     * @param tone index of the colour, 0 to 7
     */
    public static Series readings(LoadCurve curve, String name, double confidence, int tone) {
        return readings(curve, name, power -> power.expandedUncertainty(confidence), tone);
    }

    /**
     * Returns the readings of a curve as markers, each with a bar of its whole uncertainty, widened as the caller wants.
     *
     * @param name for the legend
     * @param halfLength half the length of the bar of an estimate, at least 0
     * @param tone index of the colour, 0 to 7
     */
    public static Series readings(LoadCurve curve, String name, ToDoubleFunction<Estimate> halfLength, int tone) {
        List<PlotPoint> points = new ArrayList<>();
        for (PowerPoint point : curve.points()) {
            double half = halfLength.applyAsDouble(
                    Estimate.of(point.powerWatts(), curve.totalStandardUncertaintyWatts(point)));
            points.add(new PlotPoint(point.supplyVolts(), point.powerWatts(), OptionalDouble.of(half)));
        }
        return new Series(name, points, Style.MARKERS, tone);
    }

    /** Returns the fitted curve as a line over a range; a dashed one when it rests on a single supply voltage. */
    public static Series line(LoadCurve curve, VoltsRange range, String name, int tone) {
        List<PlotPoint> points = new ArrayList<>();
        for (double supplyVolts : steps(range)) {
            points.add(new PlotPoint(supplyVolts, curve.powerAt(supplyVolts).value()));
        }
        Style style = curve.curve() instanceof SquareLawFallback ? Style.DASHED_LINE : Style.LINE;
        return new Series(name, points, style, tone);
    }

    /**
     * Returns where the true curve lies, its own and the shared uncertainty together, cut off at 0 W.
     *
     * @param confidence coverage of the band, strictly between 0 and 1
     */
    public static Band band(LoadCurve curve, VoltsRange range, String name, double confidence, int tone) {
        return band(curve, range, name, power -> power.expandedUncertainty(confidence), tone);
    }

    /**
     * Returns where the true curve lies, its own and the shared uncertainty together, widened as the caller wants, cut off at 0 W.
     *
     * @param halfWidth half the width of the band about an estimate, at least 0
     */
    public static Band band(
            LoadCurve curve, VoltsRange range, String name, ToDoubleFunction<Estimate> halfWidth, int tone) {
        List<BandPoint> edges = new ArrayList<>();
        for (double supplyVolts : steps(range)) {
            Estimate power = curve.powerAt(supplyVolts);
            double half = halfWidth.applyAsDouble(power);
            edges.add(new BandPoint(supplyVolts, Math.max(0, power.value() - half), Math.max(0, power.value() + half)));
        }
        return new Band(name, edges, tone);
    }

    /**
     * Returns whether a rating speaks of what the curves of a group show: same kind of power and mode, and the end point the rating's
     * distortion limit. Whether the load fits is not asked.
     */
    public static boolean concerns(Rating rating, CurveGroup group) {
        return rating.kind() == group.kind()
                && rating.mode() == group.mode()
                && group.endPoint() instanceof EndPoint.DistortionLimit limit
                && RatingJudge.sameLimit(limit, rating);
    }

    /** Returns whether a load counts as the rated one. */
    public static boolean ratedLoad(Rating rating, double nominalLoadOhms) {
        return RatingJudge.sameLoad(rating, nominalLoadOhms);
    }

    private static double[] steps(VoltsRange range) {
        if (range.upperVolts() <= range.lowerVolts()) {
            return new double[] {range.lowerVolts()};
        }
        double[] supplyVolts = new double[STEPS + 1];
        for (int step = 0; step <= STEPS; step++) {
            supplyVolts[step] = range.lowerVolts() + (range.upperVolts() - range.lowerVolts()) * step / STEPS;
        }
        return supplyVolts;
    }
}
