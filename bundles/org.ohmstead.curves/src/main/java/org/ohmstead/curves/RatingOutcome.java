// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.OptionalDouble;
import org.ohmstead.metrology.Verdict;

/**
 * What was found for a rating, at the rating's own supply voltage.
 *
 * @param channel the channel that decides: the one with the least power
 * @param powerWatts measured power there, in watts
 * @param standardUncertaintyWatts its standard uncertainty
 * @param expandedUncertaintyWatts half-width of its coverage interval
 * @param coverageFactor expanded over standard uncertainty
 * @param powerRatio measured over rated power
 * @param differenceDb the same in dB
 * @param verdict meets, falls short or undecided
 * @param probabilityMet probability that the true power is at least the rated one, 0 to 1
 * @param extrapolated whether the rating's supply voltage lies outside the measured range
 * @param justMetSupplyVolts supply volts at which the rating would just be met, when the curve has such a place
 */
public record RatingOutcome(
        String channel,
        double powerWatts,
        double standardUncertaintyWatts,
        double expandedUncertaintyWatts,
        double coverageFactor,
        double powerRatio,
        double differenceDb,
        Verdict verdict,
        double probabilityMet,
        boolean extrapolated,
        OptionalDouble justMetSupplyVolts) {

    /**
     * Returns the specific consumer's risk, 0 to 1: the probability that the rating is missed although it is said to be met (JCGM 106,
     * clause 9); empty unless it is said to be met.
     */
    public OptionalDouble consumersRisk() {
        return verdict == Verdict.MEETS ? OptionalDouble.of(1 - probabilityMet) : OptionalDouble.empty();
    }

    /**
     * Returns the specific producer's risk, 0 to 1: the probability that the rating is met although it is said to be missed (JCGM 106,
     * clause 9); empty unless it is said to be missed.
     */
    public OptionalDouble producersRisk() {
        return verdict == Verdict.FALLS_SHORT ? OptionalDouble.of(probabilityMet) : OptionalDouble.empty();
    }
}
