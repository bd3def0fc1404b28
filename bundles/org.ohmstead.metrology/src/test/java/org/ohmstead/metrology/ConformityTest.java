// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.metrology.Tolerances.assertClose;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConformityTest {

    private static final DecisionRule SIMPLE = new DecisionRule.SimpleAcceptance();
    private static final DecisionRule REJECTION = new DecisionRule.GuardedRejection(0.95);
    private static final double Z95 = 1.6448536269514722;

    // Standard normal distribution function, closed form (1 + erf(z/sqrt2))/2, any table of it.
    @ParameterizedTest
    @CsvSource({
        "0, 0.5",
        "1, 0.8413447460685429",
        "-1, 0.15865525393145705",
        "1.6448536269514722, 0.95",
        "1.959963984540054, 0.975",
        "2, 0.9772498680518208",
        "-3, 0.0013498980316300933"
    })
    void conformanceProbabilityIsTheNormalDistribution(double z, double probability) {
        Assessment atLeast = Conformity.assessAtLeast(Estimate.of(100 + 2 * z, 2), 100, SIMPLE);
        assertClose(probability, atLeast.probabilityMet(), 1e-9);
        Assessment atMost = Conformity.assessAtMost(Estimate.of(100 - 2 * z, 2), 100, SIMPLE);
        assertClose(probability, atMost.probabilityMet(), 1e-9);
    }

    @Test
    void finiteDegreesOfFreedomUseStudentsT() {
        // Closed forms: nu = 1 is the Cauchy distribution, F(1) = 3/4; t(0.95, 4) = 2.1318.
        assertClose(
                0.75,
                Conformity.assessAtLeast(new Estimate(101, 1, 1), 100, SIMPLE).probabilityMet(),
                1e-9);
        Assessment assessment = Conformity.assessAtLeast(new Estimate(102, 1, 4), 100, DecisionRule.DEFAULT);
        assertEquals(2.1318, assessment.guardBand(), 0.00005);
        assertEquals(Verdict.UNDECIDED, assessment.verdict());
        assertEquals(
                Verdict.MEETS,
                Conformity.assessAtLeast(Estimate.of(102, 1), 100, DecisionRule.DEFAULT)
                        .verdict());
    }

    @ParameterizedTest
    @CsvSource({
        "103.30, MEETS, MEETS, MEETS",
        "103.28, UNDECIDED, MEETS, MEETS",
        "100.00, UNDECIDED, MEETS, MEETS",
        "99.99, UNDECIDED, FALLS_SHORT, MEETS",
        "96.72, UNDECIDED, FALLS_SHORT, MEETS",
        "96.70, FALLS_SHORT, FALLS_SHORT, FALLS_SHORT"
    })
    void rulesDifferWithinTheGuardBand(double watts, Verdict guarded, Verdict simple, Verdict rejection) {
        // u = 2 W, one-sided 95 %: g = 1.644854 x 2 = 3.289707 W about the limit of 100 W.
        Estimate measured = Estimate.of(watts, 2);
        Assessment assessment = Conformity.assessAtLeast(measured, 100, DecisionRule.DEFAULT);
        assertEquals(guarded, assessment.verdict());
        assertEquals(simple, Conformity.assessAtLeast(measured, 100, SIMPLE).verdict());
        assertEquals(
                rejection, Conformity.assessAtLeast(measured, 100, REJECTION).verdict());
        boolean sureOfMeeting = assessment.probabilityMet() >= 0.95;
        boolean sureOfMissing = assessment.probabilityMet() <= 0.05;
        assertEquals(sureOfMeeting, guarded == Verdict.MEETS);
        assertEquals(sureOfMissing, guarded == Verdict.FALLS_SHORT);
        Estimate mirrored = Estimate.of(200 - watts, 2);
        assertEquals(
                guarded,
                Conformity.assessAtMost(mirrored, 100, DecisionRule.DEFAULT).verdict());
        assertEquals(
                rejection, Conformity.assessAtMost(mirrored, 100, REJECTION).verdict());
    }

    @Test
    void acceptanceLimitMovesByTheGuardBand() {
        Estimate measured = Estimate.of(95, 2);
        double guard = 2 * Z95;
        assertClose(
                100 + guard,
                Conformity.assessAtLeast(measured, 100, DecisionRule.DEFAULT).acceptanceLimit(),
                1e-9);
        assertClose(
                100 - guard, Conformity.assessAtLeast(measured, 100, REJECTION).acceptanceLimit(), 1e-9);
        assertClose(
                100 - guard,
                Conformity.assessAtMost(measured, 100, DecisionRule.DEFAULT).acceptanceLimit(),
                1e-9);
        assertClose(100, Conformity.assessAtLeast(measured, 100, SIMPLE).acceptanceLimit(), 1e-12);
        assertClose(
                0.95, Conformity.assessAtLeast(measured, 100, SIMPLE).ratio().orElseThrow(), 1e-12);
        assertTrue(Conformity.assessAtLeast(measured, 0, SIMPLE).ratio().isEmpty());
    }

    @Test
    void anExactValueIsJudgedAsItStands() {
        Assessment on = Conformity.assessAtLeast(Estimate.of(100, 0), 100, DecisionRule.DEFAULT);
        assertEquals(Verdict.MEETS, on.verdict());
        assertEquals(1, on.probabilityMet());
        Assessment below = Conformity.assessAtLeast(Estimate.of(99.9, 0), 100, DecisionRule.DEFAULT);
        assertEquals(Verdict.FALLS_SHORT, below.verdict());
        assertEquals(0, below.probabilityMet());
    }

    @Test
    void rejectsConfidenceOutsideItsRange() {
        assertThrows(IllegalArgumentException.class, () -> new DecisionRule.GuardedAcceptance(95));
        assertThrows(IllegalArgumentException.class, () -> new DecisionRule.GuardedAcceptance(0.4));
        assertThrows(IllegalArgumentException.class, () -> new DecisionRule.GuardedRejection(1));
        Estimate measured = Estimate.of(1, 1);
        assertThrows(IllegalArgumentException.class, () -> Conformity.assessAtLeast(measured, Double.NaN, SIMPLE));
    }
}
