// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.metrology.Tolerances.REL_EXACT;
import static org.ohmstead.metrology.Tolerances.assertClose;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToleranceIntervalTest {

    private static final ToleranceInterval SUPPLY = new ToleranceInterval.Within(0, 10);

    @Test
    void conformanceProbabilityOfOneLimit() {
        // JCGM 106, clause 7: Phi((T - y)/u) for an upper limit; Phi(1.4) = 0.9192433407662289 by any table.
        Estimate measured = Estimate.of(-5.47, 0.05);
        assertEquals(0.9192433407662289, new ToleranceInterval.AtMost(-5.40).probabilityWithin(measured), 1e-12);
        assertEquals(1 - 0.9192433407662289, new ToleranceInterval.AtLeast(-5.40).probabilityWithin(measured), 1e-12);
        // Far out the probability keeps its digits: Phi(-10) = 7.619853e-24.
        assertClose(7.619853e-24, new ToleranceInterval.AtLeast(10).probabilityWithin(Estimate.of(0, 1)), 1e-6);
    }

    @Test
    void conformanceProbabilityOfTwoLimits() {
        // JCGM 106, clause 7: Phi(2.7/1.8) - Phi(-1.1/1.8) = 0.6626297864953079 (SciPy 1.17.1, scipy.stats.norm.cdf).
        ToleranceInterval tolerance = new ToleranceInterval.Within(12.5, 16.3);
        assertEquals(0.6626297864953079, tolerance.probabilityWithin(Estimate.of(13.6, 1.8)), 1e-10);
        assertEquals(1, tolerance.probabilityWithin(Estimate.of(12.5, 0)));
        assertEquals(1, tolerance.probabilityWithin(Estimate.of(16.3, 0)));
        assertEquals(0, tolerance.probabilityWithin(Estimate.of(16.4, 0)));
    }

    // Measured values from which on the true one is within 0 to 10 with the wanted probability, solved with SciPy
    // 1.17.1: brentq(lambda y: D.cdf((10-y)/u) - D.cdf(-y/u) - p, -20, 5) with D = norm or t(5).
    @ParameterizedTest
    @CsvSource({
        "2, Infinity, true, 3.2975330477574984",
        "2, Infinity, false, -3.2897072536086545",
        "1, 5, true, 2.0189649126776477"
    })
    void acceptanceLimitsHeedBothTails(double uncertainty, double freedom, boolean acceptance, double lower) {
        Estimate measured = new Estimate(5, uncertainty, freedom);
        DecisionRule rule = acceptance ? DecisionRule.acceptanceForRisk(0.05) : DecisionRule.rejectionForRisk(0.05);
        ToleranceAssessment assessment = Conformity.assess(measured, SUPPLY, rule);
        ToleranceInterval.Within accepted =
                (ToleranceInterval.Within) assessment.acceptance().orElseThrow();
        assertEquals(lower, accepted.lower(), 1e-6);
        assertEquals(10 - lower, accepted.upper(), 1e-6);
        // The verdict turns exactly there.
        double inside = accepted.lower() + 1e-6;
        double outside = accepted.lower() - 1e-6;
        assertEquals(
                Verdict.MEETS,
                Conformity.assess(new Estimate(inside, uncertainty, freedom), SUPPLY, rule)
                        .verdict());
        assertEquals(
                acceptance ? Verdict.UNDECIDED : Verdict.FALLS_SHORT,
                Conformity.assess(new Estimate(outside, uncertainty, freedom), SUPPLY, rule)
                        .verdict());
    }

    @Test
    void tooUncertainAMeasurementNeverMeets() {
        // At u = 3 the best value, 5, is within 0 to 10 with 0.9044 only (SciPy as above).
        ToleranceAssessment assessment = Conformity.assess(Estimate.of(5, 3), SUPPLY, DecisionRule.DEFAULT);
        assertEquals(0.9044192954543706, assessment.probabilityMet(), 1e-9);
        assertEquals(Verdict.UNDECIDED, assessment.verdict());
        assertTrue(assessment.acceptance().isEmpty());
        assertEquals(
                "The measured 5 V is too uncertain to say whether it meets the requirement of between 0 and 10 V; the"
                        + " true value meets it with a probability of 90.4 %. With a standard uncertainty of 3 V no"
                        + " measured value could meet it as surely as the rule asks; measure more exactly.",
                assessment.sentence("V"));
    }

    @Test
    void oneLimitIsJudgedAsByGuardBands() {
        for (double watts = 90; watts < 110; watts += 0.37) {
            Estimate measured = new Estimate(watts, 2, 6);
            for (DecisionRule rule : List.of(
                    DecisionRule.DEFAULT,
                    new DecisionRule.GuardedRejection(0.9),
                    new DecisionRule.SimpleAcceptance())) {
                Assessment guard = Conformity.assessAtLeast(measured, 100, rule);
                ToleranceAssessment chance = Conformity.assess(measured, new ToleranceInterval.AtLeast(100), rule);
                assertEquals(guard.verdict(), chance.verdict());
                assertEquals(guard.probabilityMet(), chance.probabilityMet(), 1e-12);
                assertEquals(guard.consumersRisk(), chance.consumersRisk());
                assertEquals(guard.producersRisk(), chance.producersRisk());
                ToleranceInterval.AtLeast accepted =
                        (ToleranceInterval.AtLeast) chance.acceptance().orElseThrow();
                assertEquals(guard.acceptanceLimit(), accepted.limit(), 1e-12);
                assertEquals(
                        Conformity.assessAtMost(measured, 100, rule).verdict(),
                        Conformity.assess(measured, new ToleranceInterval.AtMost(100), rule)
                                .verdict());
            }
        }
    }

    @Test
    void statesTheRiskOfTheVerdict() {
        // Phi(2) = 0.977250, Phi(-2.5) = 0.006210.
        ToleranceInterval atLeast = new ToleranceInterval.AtLeast(100);
        ToleranceAssessment met = Conformity.assess(Estimate.of(104, 2), atLeast, DecisionRule.DEFAULT);
        assertEquals(0.022750, met.consumersRisk().orElseThrow(), 1e-6);
        assertTrue(met.producersRisk().isEmpty());
        assertEquals(
                "The measured 104 W meets the requirement of at least 100 W; the risk that the true value does not is"
                        + " 2.28 %.",
                met.sentence("W"));
        ToleranceAssessment missed = Conformity.assess(Estimate.of(95, 2), atLeast, DecisionRule.DEFAULT);
        assertEquals(0.006210, missed.producersRisk().orElseThrow(), 1e-6);
        assertEquals(
                "The measured 95 W does not meet the requirement of at least 100 W; the risk that the true value meets"
                        + " it after all is 0.621 %.",
                missed.sentence("W"));
    }

    @Test
    void guardBandsFollowFromTheWantedRisk() {
        // Normal quantiles: 1.6449 for 5 %, 2.3263 for 1 %; Student's t(0.95, 4) = 2.1318.
        assertEquals(2 * 1.6449, Conformity.guardBandForRisk(Estimate.of(0, 2), 0.05), 0.0001);
        assertEquals(2.3263, Conformity.guardBandForRisk(Estimate.of(0, 1), 0.01), 0.0001);
        assertEquals(2.1318, Conformity.guardBandForRisk(new Estimate(0, 1, 4), 0.05), 0.0001);
        assertEquals(0, Conformity.guardBandForRisk(Estimate.of(0, 2), 0.5));
        assertThrows(IllegalArgumentException.class, () -> Conformity.guardBandForRisk(Estimate.of(0, 2), 0.6));
    }

    @Test
    void limitsMoveInwardsAndOutwards() {
        assertEquals(Optional.of(new ToleranceInterval.Within(1, 9)), SUPPLY.narrowedBy(1));
        assertEquals(Optional.of(new ToleranceInterval.Within(-1, 11)), SUPPLY.narrowedBy(-1));
        assertTrue(SUPPLY.narrowedBy(5.1).isEmpty());
        assertTrue(SUPPLY.contains(0) && SUPPLY.contains(10) && !SUPPLY.contains(10.1));
        assertEquals(Optional.of(new ToleranceInterval.AtMost(4)), new ToleranceInterval.AtMost(5).narrowedBy(1));
        // JCGM 106, clause 7: C = T/(4 u).
        ToleranceInterval.Within within = new ToleranceInterval.Within(-1, 1);
        assertClose(4, within.capabilityIndex(0.125).orElseThrow(), REL_EXACT);
        assertTrue(within.capabilityIndex(0).isEmpty());
        assertThrows(IllegalArgumentException.class, () -> new ToleranceInterval.Within(2, 1));
    }
}
