// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.DecisionRule;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;

class VerdictWordsTest {
    @Test
    void rulesAreThoseOfTheStandard() {
        // JCGM 106, 8.2, 8.3.2, 8.3.3.
        assertEquals(
                new DecisionRule.SimpleAcceptance(),
                VerdictWords.rule(new VerdictRule(VerdictKind.SIMPLE_ACCEPTANCE, 0.5)));
        assertEquals(
                new DecisionRule.GuardedAcceptance(0.975),
                VerdictWords.rule(new VerdictRule(VerdictKind.GUARDED_ACCEPTANCE, 0.025)));
        assertEquals(
                new DecisionRule.GuardedRejection(0.99),
                VerdictWords.rule(new VerdictRule(VerdictKind.GUARDED_REJECTION, 0.01)));
        // What a project without a choice was always judged by.
        assertEquals(
                new DecisionRule.GuardedAcceptance(0.95),
                VerdictWords.rule(new SheetSettings("", "", 0.95, "").rule()));
    }

    @Test
    void namesCarryTheRisk() {
        assertEquals(
                "guarded acceptance, risk at most 5 %",
                VerdictWords.name(new VerdictRule(VerdictKind.GUARDED_ACCEPTANCE, 1 - 0.95)));
        assertEquals(
                "guarded rejection, risk at most 0.25 %",
                VerdictWords.name(new VerdictRule(VerdictKind.GUARDED_REJECTION, 0.0025)));
        assertEquals("simple acceptance", VerdictWords.name(new VerdictRule(VerdictKind.SIMPLE_ACCEPTANCE, 0.5)));
        assertTrue(VerdictWords.sentence(new VerdictRule(VerdictKind.GUARDED_REJECTION, 0.0025))
                .contains("more than 99.75 % sure"));
    }

    @Test
    void risksAreOfTheVerdictSpoken() {
        assertEquals(
                "Consumer's risk 2.3 %: so likely is the rating missed all the same.",
                VerdictWords.risk(Verdict.MEETS, 0.97725));
        assertEquals(
                "Producer's risk < 0.1 %: so likely is the rating met all the same.",
                VerdictWords.risk(Verdict.FALLS_SHORT, 0.0004));
        assertEquals(
                "No verdict, so no risk: the rating is met with a probability of 50.0 %.",
                VerdictWords.risk(Verdict.UNDECIDED, 0.5));
        assertEquals(
                "Consumer's risk < 0.1 %: so likely is the rating missed all the same.",
                VerdictWords.risk(Verdict.MEETS, 1));
    }
}
