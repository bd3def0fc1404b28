// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.units.Decibels;

/**
 * An amplifier's gain out of readings at several levels: the line output = gain x input through zero by least squares, every level weighing
 * the same in per cent. How many dB the output rises for each dB of the input shows whether it is proportional at all.
 *
 * @param gainRatio volts at the load over volts at the input, above 0
 * @param standardUncertaintyRatio standard uncertainty of it: from the scatter (of n - 1 degrees of freedom) and from what all levels share;
 *     empty of a single level when nothing is shared
 * @param levels how many levels there were, at least 1
 * @param slope dB of output for each dB of input, 1 when proportional; empty below three levels or when they are alike
 * @param slopeStandardUncertainty standard uncertainty of that, where it is known
 * @param largestDeviationDb how far the level farthest from the line lies from it, in dB, at least 0
 */
public record GainFit(
        double gainRatio,
        OptionalDouble standardUncertaintyRatio,
        int levels,
        OptionalDouble slope,
        OptionalDouble slopeStandardUncertainty,
        double largestDeviationDb) {
    /** 20 / ln 10: by this a relative difference becomes one in dB. */
    private static final double DB_PER_RELATIVE = 20 / Math.log(10);
    /** Levels that span less than this, in dB, say nothing of the slope. */
    private static final double LEAST_SPAN_DB = 1;

    private static final int LEAST_FOR_SLOPE = 3;

    /** Checks that the gain is finite and above 0, and that there is a level. */
    public GainFit {
        Checks.positive(gainRatio, "gainRatio");
        Checks.within(levels, 1, Integer.MAX_VALUE, "levels");
        Checks.within(largestDeviationDb, 0, Double.MAX_VALUE, "largestDeviationDb");
        standardUncertaintyRatio.ifPresent(value -> Checks.finite(value, "standardUncertaintyRatio"));
        slope.ifPresent(value -> Checks.finite(value, "slope"));
        slopeStandardUncertainty.ifPresent(value -> Checks.finite(value, "slopeStandardUncertainty"));
    }

    /**
     * Returns the gain out of at least one level.
     *
     * @param sharedRelativeUncertainty standard uncertainty that all levels have in common, such as that of the source's full scale, as a
     *     ratio, at least 0
     */
    public static GainFit of(List<GainPoint> points, double sharedRelativeUncertainty) {
        if (points.isEmpty()) {
            throw new IllegalArgumentException("points is empty; a gain needs at least one level");
        }
        Checks.within(sharedRelativeUncertainty, 0, Double.MAX_VALUE, "sharedRelativeUncertainty");
        double[] input = points.stream().mapToDouble(GainPoint::inputVoltsRms).toArray();
        double[] output = points.stream().mapToDouble(GainPoint::outputVoltsRms).toArray();
        double gain = output[0] / input[0];
        double scatter = 0;
        if (points.size() > 1) {
            double[] weights = new double[input.length];
            for (int i = 0; i < weights.length; i++) {
                weights[i] = 1 / (input[i] * input[i]);
            }
            StraightLine line = StraightLine.throughOrigin(input, output, weights);
            gain = line.slope();
            scatter = line.slopeUncertainty();
        }
        double combined = Math.hypot(scatter, gain * sharedRelativeUncertainty);
        OptionalDouble slope = OptionalDouble.empty();
        OptionalDouble slopeUncertainty = OptionalDouble.empty();
        double[] inputDb = levels(input);
        if (points.size() >= LEAST_FOR_SLOPE && span(inputDb) >= LEAST_SPAN_DB) {
            StraightLine line = StraightLine.free(inputDb, levels(output));
            slope = OptionalDouble.of(line.slope());
            slopeUncertainty = OptionalDouble.of(line.slopeUncertainty());
        }
        return new GainFit(
                gain,
                points.size() > 1 || sharedRelativeUncertainty > 0
                        ? OptionalDouble.of(combined)
                        : OptionalDouble.empty(),
                points.size(),
                slope,
                slopeUncertainty,
                largestDeviationDb(points, gain));
    }

    /** Returns the gain in dB. */
    public double gainDb() {
        return Decibels.ofFieldRatio(gainRatio);
    }

    /** Returns the standard uncertainty of the gain in dB, where it is known. */
    public OptionalDouble standardUncertaintyDb() {
        return standardUncertaintyRatio.isPresent()
                ? OptionalDouble.of(DB_PER_RELATIVE * standardUncertaintyRatio.getAsDouble() / gainRatio)
                : OptionalDouble.empty();
    }

    private static double[] levels(double[] volts) {
        double[] levels = new double[volts.length];
        for (int i = 0; i < volts.length; i++) {
            levels[i] = Decibels.ofFieldRatio(volts[i]);
        }
        return levels;
    }

    private static double span(double[] levels) {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (double level : levels) {
            lowest = Math.min(lowest, level);
            highest = Math.max(highest, level);
        }
        return highest - lowest;
    }

    private static double largestDeviationDb(List<GainPoint> points, double gain) {
        double largest = 0;
        for (GainPoint point : points) {
            double deviation = Decibels.ofFieldRatio(point.outputVoltsRms() / (gain * point.inputVoltsRms()));
            largest = Math.max(largest, Math.abs(deviation));
        }
        return largest;
    }
}
