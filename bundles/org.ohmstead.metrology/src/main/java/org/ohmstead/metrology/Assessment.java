// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.OptionalDouble;
import org.ohmstead.metrology.internal.Checks;

/**
 * A measured value judged against a limit. Made by {@link Conformity}.
 *
 * @param verdict what the rule says
 * @param measured the measured value with its uncertainty
 * @param limit the limit, in the unit of the measured value
 * @param side which side of the limit is allowed
 * @param rule the decision rule that was used
 * @param probabilityMet the conformance probability, 0 to 1: how likely it is that the true value keeps the limit
 * @param guardBand the width of the guard band in the unit of the measured value, at least 0
 * @param acceptanceLimit the measured value from which on the verdict is {@link Verdict#MEETS}
 */
public record Assessment(
        Verdict verdict,
        Estimate measured,
        double limit,
        Side side,
        DecisionRule rule,
        double probabilityMet,
        double guardBand,
        double acceptanceLimit) {

    /** Which side of a limit is allowed. */
    public enum Side {
        /** The true value must be at least the limit, as for output power. */
        AT_LEAST,
        /** The true value must be at most the limit, as for distortion. */
        AT_MOST
    }

    /** Checks the ranges given above. */
    public Assessment {
        Checks.finite("limit", limit);
        Checks.notNegative("probabilityMet", probabilityMet);
        Checks.notNegative("guardBand", guardBand);
        Checks.finite("acceptanceLimit", acceptanceLimit);
    }

    /** Returns measured value over limit, e.g. 1.05 for 5 % above it; nothing if the limit is zero. */
    public OptionalDouble ratio() {
        double ratio = measured.value() / limit;
        return Double.isFinite(ratio) ? OptionalDouble.of(ratio) : OptionalDouble.empty();
    }

    /**
     * Returns the specific consumer's risk, 0 to 1: how likely this accepted item is a bad one (JCGM 106, clause 9);
     * nothing if it was not accepted.
     */
    public OptionalDouble consumersRisk() {
        return verdict == Verdict.MEETS ? OptionalDouble.of(1 - probabilityMet) : OptionalDouble.empty();
    }

    /**
     * Returns the specific producer's risk, 0 to 1: how likely this rejected item is a good one (JCGM 106, clause 9);
     * nothing if it was not rejected.
     */
    public OptionalDouble producersRisk() {
        return verdict == Verdict.FALLS_SHORT ? OptionalDouble.of(probabilityMet) : OptionalDouble.empty();
    }
}
