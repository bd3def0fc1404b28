// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import org.ohmstead.curves.internal.Checks;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;

/** What a study says about the power at a supply voltage into a load. */
public sealed interface PowerPrediction {

    /**
     * A power with its uncertainty.
     *
     * @param supplyVolts at the terminals
     * @param loadOhms as connected
     * @param mode how the channels meet it
     * @param powerWatts per channel in stereo, in the load otherwise; at least 0
     * @param curveUncertaintyWatts standard uncertainty of the curve there
     * @param readingUncertaintyWatts the same together with the scatter of one new reading
     * @param wholeUncertaintyWatts that of the curve together with what all readings have in common
     * @param degreesOfFreedom how well the curve's uncertainty is known; may be infinite
     * @param distance how far the question lies from the readings
     */
    record Predicted(
            double supplyVolts,
            double loadOhms,
            Mode mode,
            double powerWatts,
            double curveUncertaintyWatts,
            double readingUncertaintyWatts,
            double wholeUncertaintyWatts,
            double degreesOfFreedom,
            ExtrapolationDistance distance)
            implements PowerPrediction {

        /** Checks the ranges given above. */
        public Predicted {
            Checks.positive("supplyVolts", supplyVolts);
            Checks.positive("loadOhms", loadOhms);
            Checks.notNegative("powerWatts", powerWatts);
            Checks.notNegative("curveUncertaintyWatts", curveUncertaintyWatts);
            Checks.notNegative("readingUncertaintyWatts", readingUncertaintyWatts);
            Checks.notNegative("wholeUncertaintyWatts", wholeUncertaintyWatts);
        }

        /** Returns the power with the uncertainty of the curve. */
        public Estimate estimate() {
            return new Estimate(powerWatts, curveUncertaintyWatts, degreesOfFreedom);
        }

        /** Returns the power with all of its uncertainty; degrees of freedom by Welch and Satterthwaite (GUM G.4). */
        public Estimate wholeEstimate() {
            double share = wholeUncertaintyWatts > 0 ? curveUncertaintyWatts / wholeUncertaintyWatts : 1;
            double degrees = share > 0 ? degreesOfFreedom / Math.pow(share, 4) : Double.POSITIVE_INFINITY;
            return new Estimate(powerWatts, wholeUncertaintyWatts, degrees);
        }

        /**
         * Returns where the true curve lies, in watts; cut off at zero.
         *
         * @param level strictly between 0 and 1
         */
        public CoverageInterval confidenceInterval(double level) {
            return notBelowZero(estimate().interval(level));
        }

        /**
         * Returns where one new reading would lie, in watts; cut off at zero.
         *
         * @param level strictly between 0 and 1
         */
        public CoverageInterval predictionInterval(double level) {
            Estimate reading = new Estimate(powerWatts, readingUncertaintyWatts, degreesOfFreedom);
            return notBelowZero(reading.interval(level));
        }

        private static CoverageInterval notBelowZero(CoverageInterval interval) {
            return new CoverageInterval(Math.max(0, interval.lower()), interval.upper(), interval.probability());
        }
    }

    /**
     * The readings do not say.
     *
     * @param reason why, and what to do, in whole sentences
     */
    record Unknown(String reason) implements PowerPrediction {}
}
