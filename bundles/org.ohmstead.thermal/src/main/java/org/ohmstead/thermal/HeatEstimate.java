// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import org.ohmstead.model.Range;

/**
 * How much heat an amplifier gives off in a step, as a range, and what that rests on.
 *
 * @param outputWatts into all loads, on average
 * @param heatWatts what turns into heat in the amplifier, on average
 * @param loudHeatWatts the same during the hottest stretch of a burst; as {@code heatWatts} for a steady drive
 * @param basis what the figures come from
 * @param remarks what was assumed, in whole sentences
 */
public record HeatEstimate(
        double outputWatts, Range heatWatts, Range loudHeatWatts, Basis basis, List<String> remarks) {
    /** What an estimate comes from, best first. */
    public enum Basis {
        /** Input power minus output power, both measured. */
        MEASURED,
        /** The closed forms for known rails. */
        RAILS,
        /** The closed forms for rails taken from the most power that the output gives. */
        MOST_POWER,
        /** Usual efficiencies: common practice, no source. */
        COMMON_PRACTICE
    }

    public HeatEstimate {
        Checks.finite(outputWatts, "outputWatts");
        Checks.present(heatWatts, "heatWatts");
        Checks.present(loudHeatWatts, "loudHeatWatts");
        Checks.present(basis, "basis");
        remarks = List.copyOf(remarks);
    }

    /** Returns what the amplifier takes from the supply on average, in watts. */
    public Range supplyWatts() {
        return new Range(outputWatts + heatWatts.low(), outputWatts + heatWatts.high());
    }
}
