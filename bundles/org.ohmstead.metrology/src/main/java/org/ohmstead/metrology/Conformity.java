// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.StudentT;

/**
 * Judges measured values against one or two limits by JCGM 106:2012.
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

    private static final int MOST_STEPS = 200;

    private Conformity() {}

    /** Returns the judgement whether the quantity is at least the limit; both in the same unit. */
    public static Assessment assessAtLeast(Estimate measured, double lowerLimit, DecisionRule rule) {
        return assess(measured, lowerLimit, Assessment.Side.AT_LEAST, rule);
    }

    /** Returns the judgement whether the quantity is at most the limit; both in the same unit. */
    public static Assessment assessAtMost(Estimate measured, double upperLimit, DecisionRule rule) {
        return assess(measured, upperLimit, Assessment.Side.AT_MOST, rule);
    }

    /**
     * Returns the judgement against one or two limits. It goes by the conformance probability p, so that both limits
     * count where the measurement is wide: guarded acceptance meets from p = confidence on and falls short up to p = 1
     * - confidence, guarded rejection falls short below p = 1 - confidence and meets otherwise, simple acceptance looks
     * at the measured value alone. For one limit this is the same as guard bands of t(confidence) u.
     */
    public static ToleranceAssessment assess(Estimate measured, ToleranceInterval tolerance, DecisionRule rule) {
        double probability = tolerance.probabilityWithin(measured);
        Verdict verdict;
        if (rule instanceof DecisionRule.GuardedAcceptance guarded) {
            boolean missed = probability <= 1 - guarded.confidence();
            verdict = probability >= guarded.confidence()
                    ? Verdict.MEETS
                    : missed ? Verdict.FALLS_SHORT : Verdict.UNDECIDED;
        } else if (rule instanceof DecisionRule.GuardedRejection guarded) {
            verdict = probability >= 1 - guarded.confidence() ? Verdict.MEETS : Verdict.FALLS_SHORT;
        } else {
            verdict = tolerance.contains(measured.value()) ? Verdict.MEETS : Verdict.FALLS_SHORT;
        }
        Optional<ToleranceInterval> acceptance = acceptance(measured, tolerance, rule);
        return new ToleranceAssessment(verdict, measured, tolerance, rule, probability, acceptance);
    }

    /**
     * Returns the guard band that keeps the specific risk at one limit down to a wanted value, g = t(1 - risk) u (JCGM
     * 106 8.3.2), in the unit of the measured value.
     *
     * @param measured the measured value; only its uncertainty and degrees of freedom matter
     * @param risk the wanted risk, above 0 and at most 0.5
     */
    public static double guardBandForRisk(Estimate measured, double risk) {
        return guardBand(measured, DecisionRule.acceptanceForRisk(risk));
    }

    /** Returns the measured values that meet the rule, nothing if there are none. */
    private static Optional<ToleranceInterval> acceptance(
            Estimate measured, ToleranceInterval tolerance, DecisionRule rule) {
        double guardBand = guardBand(measured, rule);
        if (guardBand <= 0 || !(tolerance instanceof ToleranceInterval.Within within)) {
            return tolerance.narrowedBy(rule instanceof DecisionRule.GuardedRejection ? -guardBand : guardBand);
        }
        boolean rejection = rule instanceof DecisionRule.GuardedRejection;
        double wanted = rejection ? 1 - rule.confidence() : rule.confidence();
        DoubleUnaryOperator excess = value -> within.probabilityWithin(
                        new Estimate(value, measured.standardUncertainty(), measured.degreesOfFreedom()))
                - wanted;
        double middle = within.middle();
        if (excess.applyAsDouble(middle) < 0) {
            return Optional.empty();
        }
        double start = within.lower() + (rejection ? -guardBand : guardBand);
        double low = start;
        if (start < middle && excess.applyAsDouble(start) < 0) {
            double accuracy = 1e-10 * measured.standardUncertainty();
            low = new BrentSolver(1e-14, accuracy).solve(MOST_STEPS, excess::applyAsDouble, start, middle);
        }
        low = Math.min(low, middle);
        return Optional.of(new ToleranceInterval.Within(low, within.upper() - (low - within.lower())));
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
