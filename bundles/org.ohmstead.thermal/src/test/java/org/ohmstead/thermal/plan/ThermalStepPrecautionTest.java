// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;
import org.ohmstead.model.Supply;

class ThermalStepPrecautionTest {
    private static final Step LOUD = TestProject.step("loud", Mode.STEREO, "2ohm", 14.4);

    private static ThermalStepPrecaution precaution() {
        ThermalStepPrecaution precaution = new ThermalStepPrecaution();
        precaution.bindSharing(TestProject.SHARING);
        return precaution;
    }

    @Test
    void hasNothingToSayOfSoundSteps() {
        Project project = TestProject.sound();
        for (Step step : project.plan()) {
            assertEquals(List.of(), precaution().check(project, step), step.id());
        }
    }

    @Test
    void judgesOneStepAloneAndNamesItsPlaceInThePlan() {
        Step quiet = TestProject.step("quiet", Mode.STEREO, "8ohm", 11);
        Project project = TestProject.withPacing(TestProject.sound().withPlan(List.of(quiet, LOUD)), 1200, 5, true);
        List<Problem> problems = precaution().check(project, LOUD);
        Problem hot = problems.stream()
                .filter(problem -> problem.what().contains("case of the amplifier"))
                .findFirst()
                .orElseThrow();
        assertEquals(Severity.ERROR, hot.severity());
        assertEquals("$.plan[1]", hot.where());
        assertFalse(problems.toString().contains("warm-up"), problems.toString());
    }

    private static Project withSupplyAndFuses(double supplyAmps, double fuseAmps, String style) {
        Project project = TestProject.sound();
        Fuse fuse = new Fuse(fuseAmps, style, "");
        return project.withBench(project.bench().withSupply(new Supply("Supply", 0, 16, supplyAmps)))
                .withAmplifier(project.amplifier().withFuses(List.of(fuse, fuse)));
    }

    @Test
    void stopsByCaseAndCurrentWhatABenchCanWatch() {
        List<StopLimit> limits = precaution().stopLimits(TestProject.sound(), LOUD);
        assertEquals(2, limits.size(), "loads and cable have no thermometer");
        assertEquals(StopLimit.Quantity.CASE_CELSIUS, limits.get(0).quantity());
        assertEquals(80, limits.get(0).highest(), "the case's own limit");
        assertEquals(StopLimit.Quantity.SUPPLY_AMPS, limits.get(1).quantity());
        assertEquals(100, limits.get(1).highest(), "the supply's own limit");
        limits.forEach(limit -> assertTrue(limit.reason().endsWith("."), limit.reason()));
    }

    // By the table of blade fuses (ISO 8820-3): 1.1 times the rating opens after 360000 s at the soonest, 1.35 times
    // after 0.75 s, and logarithms go straight between: 20 s are at 1.1 (1.35 / 1.1)^(ln 18000 / ln 480000) = 1.28235.
    // At the latest 1.6 times opens after 50 s and twice after 5 s: 20 s are at 1.6 (2 / 1.6)^(lg 2.5) = 1.748577.
    // Class B (closed form): 50 W into 8 ohm peak at 3.5355 A, which from rails of 30 V takes 2 / pi 30 V 3.5355 A =
    // 67.52 W a channel, together 9.378 A at 14.4 V. Two fuses of 3.5 A may open at 8.977 A, two of 2.5 A have opened
    // at 8.743 A.
    @ParameterizedTest
    @CsvSource({
        "10, blade, 25.6470, 'may open'",
        "3.5, blade, 12.24003, 'fuses open'",
        "2.5, blade, 300, 'limits its current'",
        "10, of another kind, 15, 'at most 75 %'",
        "4, of another kind, 300, 'limits its current'"
    })
    void stopsWhereTheFusesWouldOpenWithinTheStepUnlessTheForecastIsBeyondIt(
            double fuseAmps, String style, double limitAmps, String reason) {
        Project project = withSupplyAndFuses(300, fuseAmps, style);
        List<StopLimit> limits = precaution().stopLimits(project, TestProject.step("eight", Mode.STEREO, "8ohm", 14.4));
        StopLimit amps = limits.get(limits.size() - 1);
        assertEquals(limitAmps, amps.highest(), 1e-5 * limitAmps);
        assertTrue(amps.reason().contains(reason), amps.reason());
    }

    @Test
    void asksWhoeverTellsOfPartsLastAndNobodyWhenTheyHaveGone() {
        ThermalStepPrecaution precaution = new ThermalStepPrecaution();
        int[] asked = new int[2];
        PartSharing first = (stock, branch) -> {
            asked[0]++;
            return List.of();
        };
        PartSharing second = (stock, branch) -> {
            asked[1]++;
            return List.of();
        };
        precaution.check(TestProject.sound(), LOUD);
        precaution.bindSharing(first);
        precaution.bindSharing(second);
        precaution.unbindSharing(first);
        precaution.check(TestProject.sound(), LOUD);
        assertEquals(0, asked[0]);
        int before = asked[1];
        assertTrue(before > 0);
        precaution.unbindSharing(second);
        precaution.check(TestProject.sound(), LOUD);
        assertEquals(before, asked[1]);
    }
}
