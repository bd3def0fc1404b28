// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.StudentT;

/**
 * Judges measured values against one limit by JCGM 106:2012.
 *
 * <ul>
 *   <li>Conformance probability (clause 7, "One-sided tolerance intervals with normal PDFs"): for a lower limit T and
 *       a measured value y with standard uncertainty u it is Phi((y - T)/u), for an upper limit Phi((T - y)/u). If u
 *       has finite degrees of freedom, Student's t distribution takes the place of the normal one.
 *   <li>Guard band (clause 8, "Decision rules based on guard bands"): g = t(confidence) u with the one-sided quantile
 *       of the same distribution, 1.645 u for 95 % and a normal distribution.
 *   <li>Acceptance limit for a lower limit T: T (simple acceptance), T + g (guarded acceptance), T - g (guarded
 *       rejection); mirrored for an upper limit.
 * </ul>
 *
 * A value exactly on the acceptance limit meets it. The prior knowledge about the item is taken as negligible beside
 * the measurement.
 */
public final class Conformity {

    private Conformity() {}

    /** Returns the judgement whether the quantity is at least the limit; both in the same unit. */
    public static Assessment assessAtLeast(Estimate measured, double lowerLimit, DecisionRule rule) {
        return assess(measured, lowerLimit, Assessment.Side.AT_LEAST, rule);
    }

    /** Returns the judgement whether the quantity is at most the limit; both in the same unit. */
    public static Assessment assessAtMost(Estimate measured, double upperLimit, DecisionRule rule) {
        return assess(measured, upperLimit, Assessment.Side.AT_MOST, rule);
    }

    private static Assessment assess(Estimate measured, double limit, Assessment.Side side, DecisionRule rule) {
        Checks.finite("limit", limit);
        double direction = side == Assessment.Side.AT_LEAST ? 1 : -1;
        double margin = direction * (measured.value() - limit);
        double guardBand = guardBand(measured, rule);
        double shift = rule instanceof DecisionRule.GuardedRejection ? -guardBand : guardBand;
        Verdict verdict;
        if (margin >= shift) {
            verdict = Verdict.MEETS;
        } else if (rule instanceof DecisionRule.GuardedAcceptance && margin > -guardBand) {
            verdict = Verdict.UNDECIDED;
        } else {
            verdict = Verdict.FALLS_SHORT;
        }
        double probability = probabilityMet(margin, measured);
        return new Assessment(verdict, measured, limit, side, rule, probability, guardBand, limit + direction * shift);
    }

    private static double guardBand(Estimate measured, DecisionRule rule) {
        if (rule.confidence() <= 0.5) {
            return 0;
        }
        return StudentT.quantile(rule.confidence(), measured.degreesOfFreedom()) * measured.standardUncertainty();
    }

    private static double probabilityMet(double margin, Estimate measured) {
        if (measured.standardUncertainty() <= 0) {
            return margin >= 0 ? 1 : 0;
        }
        return StudentT.below(margin / measured.standardUncertainty(), measured.degreesOfFreedom());
    }
}
