// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.signal.ChannelAnalysis;

/**
 * Finds the power at an end point in a recorded sweep of levels.
 *
 * <p>A distortion limit is sought from the level of least distortion upwards, since crossover distortion and noise can exceed the
 * limit at low levels without ending the amplifier's useful range. Between the two levels around the limit, distortion is taken as a
 * monotone cubic in the logarithm of power. For an ideal clipper recorded every 0.25 dB that is within 0.2 % of the exact power
 * wherever the levels lie, where straight lines on logarithmic scales are up to 0.5 % off. The distance to a straight line is kept
 * as what the choice leaves open.
 */
public final class EndPointFinder {
    /** Powers and volts below this count as this, so that logarithms exist. */
    private static final double LEAST = 1e-10;

    /** Levels of a fixed-level end point may differ from a recorded level by this much, in dB, and count as it. */
    private static final double SAME_LEVEL_DB = 1e-6;

    private EndPointFinder() {}

    /**
     * Returns where the levels meet the end point.
     *
     * @param levels at least one, rising in drive
     * @param endPoint what to look for
     */
    public static EndPointResult find(List<AnalyzedLevel> levels, EndPoint endPoint) {
        if (levels.isEmpty()) {
            throw new IllegalArgumentException("levels is empty; an end point needs at least one level");
        }
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return atDistortion(levels, limit);
        }
        if (endPoint instanceof EndPoint.FixedLevel fixed) {
            return atLevel(levels, fixed.driveDb());
        }
        return atClippingOnset(levels);
    }

    private static EndPointResult atDistortion(List<AnalyzedLevel> levels, EndPoint.DistortionLimit limit) {
        ToDoubleFunction<AnalyzedLevel> distortion = level -> ratio(level.analysis(), limit.measure());
        int least = leastDistorted(levels, limit.measure());
        if (distortion.applyAsDouble(levels.get(least)) > limit.ratio()) {
            return outside(levels, 0, EndPointOutcome.ALREADY_BEYOND);
        }
        for (int upper = least + 1; upper < levels.size(); upper++) {
            if (distortion.applyAsDouble(levels.get(upper)) > limit.ratio()) {
                return crossing(levels, upper, distortion, limit.ratio());
            }
        }
        return outside(levels, levels.size() - 1, EndPointOutcome.NOT_REACHED);
    }

    /** Returns the index of the level of least distortion; the highest of several. */
    static int leastDistorted(List<AnalyzedLevel> levels, DistortionMeasure measure) {
        int least = 0;
        for (int i = 1; i < levels.size(); i++) {
            if (ratio(levels.get(i).analysis(), measure)
                    <= ratio(levels.get(least).analysis(), measure)) {
                least = i;
            }
        }
        return least;
    }

    private static EndPointResult crossing(
            List<AnalyzedLevel> levels, int upper, ToDoubleFunction<AnalyzedLevel> distortion, double limitRatio) {
        AnalyzedLevel below = levels.get(upper - 1);
        AnalyzedLevel above = levels.get(upper);
        double ratioBelow = distortion.applyAsDouble(below);
        double ratioAbove = distortion.applyAsDouble(above);
        double linearShare = (limitRatio - ratioBelow) / (ratioAbove - ratioBelow);
        double share = cubicShare(levels, upper, distortion, limitRatio).orElse(linearShare);
        double halfWidthWatts = Math.abs(between(below.powerWatts(), above.powerWatts(), share)
                - between(below.powerWatts(), above.powerWatts(), linearShare));
        return interpolated(levels, upper, share, linearShare, halfWidthWatts);
    }

    /** A sweep whose power does not rise from level to level (a supply that collapses) leaves only the straight line. */
    private static OptionalDouble cubicShare(
            List<AnalyzedLevel> levels, int upper, ToDoubleFunction<AnalyzedLevel> distortion, double limitRatio) {
        int first = Math.max(0, upper - 2);
        int last = Math.min(levels.size() - 1, upper + 1);
        double[] x = new double[last - first + 1];
        double[] y = new double[x.length];
        for (int i = first; i <= last; i++) {
            x[i - first] = Math.log(Math.max(levels.get(i).powerWatts(), LEAST));
            y[i - first] = distortion.applyAsDouble(levels.get(i));
            if (i > first && !(x[i - first] > x[i - first - 1])) {
                return OptionalDouble.empty();
            }
        }
        return OptionalDouble.of(new MonotoneCubic(x, y).shareAt(upper - first, limitRatio));
    }

    private static EndPointResult atLevel(List<AnalyzedLevel> levels, double driveDb) {
        for (int i = 0; i < levels.size(); i++) {
            if (Math.abs(levels.get(i).driveDb() - driveDb) <= SAME_LEVEL_DB) {
                return outside(levels, i, EndPointOutcome.REACHED);
            }
            if (levels.get(i).driveDb() > driveDb) {
                if (i == 0) {
                    return outside(levels, 0, EndPointOutcome.ALREADY_BEYOND);
                }
                double lowerDb = levels.get(i - 1).driveDb();
                double share = (driveDb - lowerDb) / (levels.get(i).driveDb() - lowerDb);
                return interpolated(levels, i, share, share, 0);
            }
        }
        return outside(levels, levels.size() - 1, EndPointOutcome.NOT_REACHED);
    }

    /**
     * The onset lies between the last clean level and the first clipped one; the clipped wave tells how far its drive is beyond the
     * onset, which places it. Without that distance the middle is taken.
     */
    private static EndPointResult atClippingOnset(List<AnalyzedLevel> levels) {
        int first = 0;
        while (first < levels.size() && !levels.get(first).analysis().clipping().clipped()) {
            first++;
        }
        if (first == levels.size()) {
            return outside(levels, levels.size() - 1, EndPointOutcome.NOT_REACHED);
        }
        if (first == 0) {
            return outside(levels, 0, EndPointOutcome.ALREADY_BEYOND);
        }
        AnalyzedLevel below = levels.get(first - 1);
        AnalyzedLevel above = levels.get(first);
        double stepDb = above.driveDb() - below.driveDb();
        double overDb = above.analysis().clipping().driveOverOnsetDb();
        double share = stepDb > 0 ? Math.min(1, Math.max(0, 1 - overDb / stepDb)) : 0.5;
        double halfWidthWatts = Math.abs(above.powerWatts() - below.powerWatts()) / 4;
        return interpolated(levels, first, share, share, halfWidthWatts);
    }

    private static EndPointResult interpolated(
            List<AnalyzedLevel> levels, int upper, double share, double distortionShare, double halfWidthWatts) {
        AnalyzedLevel below = levels.get(upper - 1);
        AnalyzedLevel above = levels.get(upper);
        OptionalDouble amps = below.supplyAmps().isPresent()
                        && above.supplyAmps().isPresent()
                ? OptionalDouble.of(linear(
                        below.supplyAmps().getAsDouble(), above.supplyAmps().getAsDouble(), share))
                : OptionalDouble.empty();
        return new EndPointResult(
                EndPointOutcome.REACHED,
                between(below.powerWatts(), above.powerWatts(), share),
                between(below.analysis().outputVoltsRms(), above.analysis().outputVoltsRms(), share),
                linear(below.analysis().thdFRatio(), above.analysis().thdFRatio(), distortionShare),
                linear(below.supplyVolts(), above.supplyVolts(), share),
                amps,
                share < 0.5 ? upper - 1 : upper,
                halfWidthWatts);
    }

    private static EndPointResult outside(List<AnalyzedLevel> levels, int index, EndPointOutcome outcome) {
        AnalyzedLevel level = levels.get(index);
        return new EndPointResult(
                outcome,
                level.powerWatts(),
                level.analysis().outputVoltsRms(),
                level.analysis().thdFRatio(),
                level.supplyVolts(),
                level.supplyAmps(),
                index,
                0);
    }

    /** Interpolates on a logarithmic scale; a value that is not above zero has no logarithm and is taken as very small. */
    private static double between(double below, double above, double share) {
        double low = Math.max(below, LEAST);
        double high = Math.max(above, LEAST);
        return low * Math.pow(high / low, share);
    }

    private static double linear(double below, double above, double share) {
        return below + share * (above - below);
    }

    /** Returns one of the distortion figures. */
    static double ratio(ChannelAnalysis analysis, DistortionMeasure measure) {
        return switch (measure) {
            case THD_F -> analysis.thdFRatio();
            case THD_R -> analysis.thdRRatio();
            case THD_PLUS_NOISE_R -> analysis.thdPlusNoiseRRatio();
        };
    }
}
