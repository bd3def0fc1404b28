// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import org.ohmstead.metrology.internal.Checks;

/** How sure one must be before a verdict is spoken (JCGM 106:2012, clause 8 "Acceptance intervals"). */
public sealed interface DecisionRule {

    /** The usual rule of this program: guarded acceptance with 95 % confidence on either side. */
    DecisionRule DEFAULT = new GuardedAcceptance(0.95);

    /**
     * Returns the one-sided confidence that sets the width of the guard band, g = t(confidence) u; 0.5 means no guard
     * band.
     */
    double confidence();

    /**
     * Returns guarded acceptance that takes at most this risk of accepting a bad item at the acceptance limit.
     *
     * @param consumersRisk above 0 and at most 0.5, e.g. 0.05
     */
    static DecisionRule acceptanceForRisk(double consumersRisk) {
        return new GuardedAcceptance(1 - Checks.probability("consumersRisk", consumersRisk));
    }

    /**
     * Returns guarded rejection that takes at most this risk of rejecting a good item at the acceptance limit.
     *
     * @param producersRisk above 0 and at most 0.5, e.g. 0.05
     */
    static DecisionRule rejectionForRisk(double producersRisk) {
        return new GuardedRejection(1 - Checks.probability("producersRisk", producersRisk));
    }

    /**
     * Simple acceptance, also called shared risk (JCGM 106 8.2): the measured value is taken as it is, its uncertainty
     * is not subtracted.
     */
    record SimpleAcceptance() implements DecisionRule {

        @Override
        public double confidence() {
            return 0.5;
        }
    }

    /**
     * Guarded acceptance (JCGM 106 8.3.2), extended by a mirrored guard band on the far side of the limit: meets if
     * the probability that the limit is kept is at least {@code confidence}, falls short if it is at most 1 - {@code
     * confidence}, else undecided.
     *
     * @param confidence one-sided, at least 0.5 and below 1, e.g. 0.95
     */
    record GuardedAcceptance(double confidence) implements DecisionRule {

        /** Checks the range given above. */
        public GuardedAcceptance {
            checkConfidence(confidence);
        }
    }

    /**
     * Guarded rejection (JCGM 106 8.3.3): falls short only if the probability that the limit is missed is above {@code
     * confidence}, else meets.
     *
     * @param confidence one-sided, at least 0.5 and below 1, e.g. 0.95
     */
    record GuardedRejection(double confidence) implements DecisionRule {

        /** Checks the range given above. */
        public GuardedRejection {
            checkConfidence(confidence);
        }
    }

    private static void checkConfidence(double confidence) {
        Checks.probability("confidence", confidence);
        if (confidence < 0.5) {
            throw new IllegalArgumentException(
                    "confidence is " + confidence + " but must be at least 0.5; below that a guard band is negative.");
        }
    }
}
