// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.OptionalDouble;
import org.ohmstead.load.Network;

/**
 * A network found.
 *
 * @param network resistors and how they are joined
 * @param ohms its resistance in ohms
 * @param errorRatio its resistance relative to the target, less 1: -0.01 is 1 % too low
 * @param parts number of its resistors
 * @param worstCaseLowOhms resistance in ohms with every resistor at the low end of its tolerance
 * @param worstCaseHighOhms resistance in ohms with every resistor at the high end of its tolerance
 * @param powerLimitWatts greatest power in watts that loads no resistor beyond its rating at the ambient temperature of the request;
 *     empty when one of its resistors has no rating
 */
public record Candidate(
        Network network,
        double ohms,
        double errorRatio,
        int parts,
        double worstCaseLowOhms,
        double worstCaseHighOhms,
        OptionalDouble powerLimitWatts) {
    public Candidate {
        Checks.present(network, "network");
        Checks.positive(ohms, "ohms");
        Checks.finite(errorRatio, "errorRatio");
        Checks.within(parts, 1, Integer.MAX_VALUE, "parts");
        Checks.finite(worstCaseLowOhms, "worstCaseLowOhms");
        Checks.finite(worstCaseHighOhms, "worstCaseHighOhms");
        Checks.present(powerLimitWatts, "powerLimitWatts");
    }

    /** Returns the greater of the two worst-case deviations relative to {@link #ohms}: 0.05 is 5 %. */
    public double worstCaseRatio() {
        return Math.max(worstCaseHighOhms / ohms - 1, 1 - worstCaseLowOhms / ohms);
    }
}
