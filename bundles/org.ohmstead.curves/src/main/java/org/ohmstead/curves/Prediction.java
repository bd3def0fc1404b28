// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import org.ohmstead.curves.internal.Checks;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Estimate;

/**
 * What a curve says about one supply voltage.
 *
 * @param supplyVolts the supply voltage asked for, greater than 0
 * @param powerWatts the power on the curve, at least 0
 * @param standardUncertaintyWatts the standard uncertainty of the curve at this voltage, at least 0
 * @param predictionStandardUncertaintyWatts the same together with the scatter of one new reading; never smaller
 * @param degreesOfFreedom how well the uncertainties are known, greater than 0; infinite if they come from the
 *     readings' own uncertainties
 * @param extrapolationVolts how far the voltage lies outside the range of the readings; 0 inside it
 */
public record Prediction(
        double supplyVolts,
        double powerWatts,
        double standardUncertaintyWatts,
        double predictionStandardUncertaintyWatts,
        double degreesOfFreedom,
        double extrapolationVolts) {

    /** Checks the ranges given above. */
    public Prediction {
        Checks.positive("supplyVolts", supplyVolts);
        Checks.notNegative("powerWatts", powerWatts);
        Checks.notNegative("standardUncertaintyWatts", standardUncertaintyWatts);
        Checks.notNegative("extrapolationVolts", extrapolationVolts);
        if (!(predictionStandardUncertaintyWatts >= standardUncertaintyWatts)
                || !Double.isFinite(predictionStandardUncertaintyWatts)) {
            throw new IllegalArgumentException("predictionStandardUncertaintyWatts is "
                    + predictionStandardUncertaintyWatts + " but must be finite and at least that of the curve, "
                    + standardUncertaintyWatts + ".");
        }
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException(
                    "degreesOfFreedom is " + degreesOfFreedom + " but must be greater than zero or infinite.");
        }
    }

    /** Returns the power on the curve with the uncertainty of the curve, e.g. for a verdict. */
    public Estimate estimate() {
        return new Estimate(powerWatts, standardUncertaintyWatts, degreesOfFreedom);
    }

    /**
     * Returns where the true curve lies, in watts; cut off at zero.
     *
     * @param level the level of confidence, strictly between 0 and 1
     */
    public CoverageInterval confidenceInterval(double level) {
        return notBelowZero(estimate().interval(level));
    }

    /**
     * Returns where one new reading would lie, in watts; cut off at zero.
     *
     * @param level the level of confidence, strictly between 0 and 1
     */
    public CoverageInterval predictionInterval(double level) {
        return notBelowZero(
                new Estimate(powerWatts, predictionStandardUncertaintyWatts, degreesOfFreedom).interval(level));
    }

    /**
     * Returns whether the voltage lies outside the range of the readings, where the curve is less to be trusted than
     * it says.
     */
    public boolean extrapolated() {
        return extrapolationVolts > 0;
    }

    private static CoverageInterval notBelowZero(CoverageInterval interval) {
        return new CoverageInterval(Math.max(0, interval.lower()), interval.upper(), interval.probability());
    }
}
