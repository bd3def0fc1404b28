// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.FitException;
import org.ohmstead.metrology.LinearFit;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.metrology.internal.StudentT;
import org.ohmstead.units.text.Messages;

/**
 * The straight line through readings over time by least squares (as GUM H.3), and whether its slope is more than
 * chance: Student's t test of the slope.
 *
 * @param slope the change per unit of time with its standard uncertainty and n - 2 degrees of freedom
 * @param interval the slope's coverage interval at the wanted confidence
 * @param pValue how likely chance alone makes a slope as steep either way, 0 to 1
 * @param drifts whether the interval leaves zero out
 */
public record DriftLine(Estimate slope, CoverageInterval interval, double pValue, boolean drifts) {
    private static final Messages TEXTS = Messages.of(DriftLine.class);

    private static final int FEWEST_READINGS = 3;

    /** Checks that the probability is not negative. */
    public DriftLine {
        Checks.notNegative("pValue", pValue);
    }

    /**
     * Returns the line.
     *
     * @param times when the readings were taken, in any unit of time, not all equal
     * @param values the readings, at least three
     * @param confidence the confidence of the interval, strictly between 0 and 1, e.g. 0.95
     * @throws FitException if all readings were taken at the same time
     */
    public static DriftLine of(double[] times, double[] values, double confidence) throws FitException {
        Checks.sameLength("times", times.length, "values", values.length);
        Checks.probability("confidence", confidence);
        if (values.length < FEWEST_READINGS) {
            throw new IllegalArgumentException(
                    "values has " + values.length + " readings but needs at least " + FEWEST_READINGS + ".");
        }
        double middle = Group.of(times).mean();
        double[] centred = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            centred[i] = times[i] - middle;
        }
        Estimate slope = LinearFit.line(centred, values).estimate(1);
        double ratio = -Math.abs(slope.value()) / slope.standardUncertainty();
        double pValue = slope.value() == 0 ? 1 : 2 * StudentT.below(ratio, slope.degreesOfFreedom());
        return new DriftLine(slope, slope.interval(confidence), pValue, pValue < 1 - confidence);
    }

    /**
     * Returns the result in a whole sentence.
     *
     * @param unit the unit of the readings, may be empty
     * @param timeUnit one unit of time in words, e.g. "day"
     */
    public String sentence(String unit, String timeUnit) {
        double half = interval.width() / 2;
        return TEXTS.text(
                drifts ? "drift.yes" : "drift.no",
                Sentences.number(slope.value()),
                Sentences.quantity(half, unit),
                timeWord(timeUnit));
    }

    /** Returns a unit of time in the language spoken where it is "day" or "year"; another as it is. */
    static String timeWord(String timeUnit) {
        String key = "time." + timeUnit;
        return TEXTS.has(key) ? TEXTS.text(key) : timeUnit;
    }
}
