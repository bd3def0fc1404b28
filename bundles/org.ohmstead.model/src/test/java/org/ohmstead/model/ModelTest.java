// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ModelTest {
    // IEC 60028 copper (1/58 ohm mm2/m at 20 C) over the AWG cross-sections of ASTM B258: 0.81517 ohm/km for 4 AWG,
    // 3.27711 for 10.
    @ParameterizedTest
    @CsvSource({"21.1506, 10, 8.1517e-3", "5.2612, 1000, 3.27711", "3.3088, 1000, 5.21081"})
    void copperCableHasItsResistance(double squareMillimetres, double loopMetres, double expectedOhms) {
        Cable cable = new Cable(squareMillimetres, loopMetres, OptionalDouble.empty());
        assertEquals(expectedOhms, cable.loopOhms(), 2e-5 * expectedOhms);
        assertEquals(0.01, new Cable(21, 10, OptionalDouble.of(0.01)).loopOhms());
    }

    // Worked by hand after GUM 4.3.7: 20.00 V with +-(0.5 % + 0.03 V), rectangular: 0.13/sqrt 3 = 0.0750555 V.
    @Test
    void meterSpecificationBecomesAStandardUncertainty() {
        assertEquals(0.0750555, new Accuracy(0.005, 0.03, 0, 0).standardUncertainty(20), 1e-7);
        assertEquals(0.065, new Accuracy(0.005, 0.03, 0, 2).standardUncertainty(20), 1e-12);
        // Resolution of 0.01: 0.01 / (2 sqrt 3) = 0.00288675 (GUM F.2.2.1).
        assertEquals(0.00288675, new Accuracy(0, 0, 0.01, 0).standardUncertainty(20), 1e-8);
    }

    @Test
    void refusesWhatCannotBe() {
        assertThrows(IllegalArgumentException.class, () -> new LoadBranch(0, 0, 0, ""));
        assertThrows(IllegalArgumentException.class, () -> new LoadBranch(Double.NaN, 0, 0, ""));
        assertThrows(IllegalArgumentException.class, () -> new Stimulus.ToneBurst(1000, 0.5, 0.5, -20));
        assertThrows(IllegalArgumentException.class, () -> new EndPoint.DistortionLimit(0, DistortionMeasure.THD_F));
        assertThrows(IllegalArgumentException.class, () -> new BenchLoad("l", 4, List.of(), 100));
        IllegalArgumentException error = assertThrows(IllegalArgumentException.class, () -> new Supply("s", 10, 9, 50));
        assertTrue(error.getMessage().contains("highestVolts is 9.0"), error.getMessage());
    }

    @Test
    void listsAreCopied() {
        List<LoadBranch> branches = new ArrayList<>(List.of(new LoadBranch(4, 0.01, 0, "")));
        BenchLoad load = new BenchLoad("l", 4, branches, 100);
        branches.clear();
        assertEquals(1, load.branches().size());
    }

    @Test
    void aSoundProjectHasNoProblems() {
        assertEquals(List.of(), ProjectChecks.check(SampleProject.sound(), LocalDate.of(2026, 3, 2)));
    }

    @Test
    void calibrationRunsOut() {
        List<Problem> problems = ProjectChecks.check(SampleProject.sound(), LocalDate.of(2027, 1, 16));
        assertEquals(1, problems.size());
        assertEquals("$.bench.meters[0].calibrationDueOn", problems.get(0).where());
        assertEquals(Severity.WARNING, problems.get(0).severity());
    }

    @Test
    void aStepBelowTheLowestLoadNeedsAYes() {
        Project project = SampleProject.sound();
        Step low = new Step(
                "low",
                Mode.BRIDGED,
                "2ohm",
                14.4,
                new Stimulus.ContinuousSine(40),
                new EndPoint.ClippingOnset(),
                false);
        Problem problem = only(project.withPlan(with(project.plan(), low)));
        assertEquals(Severity.ERROR, problem.severity());
        assertTrue(problem.what().contains("below the lowest load of 4.000 ohm"), problem.what());
        Step confirmed = new Step("low", Mode.BRIDGED, "2ohm", 14.4, low.stimulus(), low.endPoint(), true);
        assertEquals(
                List.of(),
                ProjectChecks.check(project.withPlan(with(project.plan(), confirmed)), LocalDate.of(2026, 3, 2)));
    }

    @Test
    void findsTheRestOfWhatCanBeWrong() {
        Project project = SampleProject.sound().withHeat(HeatData.NONE);
        Step step = project.plan().get(0);
        Step nowhere = new Step("x", step.mode(), "nowhere", 14.4, step.stimulus(), step.endPoint(), false);
        assertTrue(only(project.withPlan(with(project.plan(), nowhere))).what().contains("does not exist"));
        Amplifier two = project.amplifier();
        Amplifier one = new Amplifier(
                two.maker(),
                two.model(),
                two.serialNumber(),
                1,
                two.supplyType(),
                List.of(),
                two.fuses(),
                two.heatSinkKelvinPerWatt(),
                List.of(),
                two.notes());
        Step bridged = new Step("b", Mode.BRIDGED, "4ohm", 14.4, step.stimulus(), step.endPoint(), false);
        assertTrue(only(project.withAmplifier(one).withPlan(List.of(bridged)))
                .what()
                .contains("only one channel"));
        Step tooHigh = new Step("x", step.mode(), step.loadId(), 19, step.stimulus(), step.endPoint(), false);
        assertTrue(only(project.withPlan(with(project.plan(), tooHigh))).what().contains("outside the supply's range"));
        assertTrue(only(project.withPlan(with(project.plan(), step))).what().contains("used twice"));
        assertTrue(only(project.withPlan(List.of())).what().contains("No step of the plan measures"));
        BenchLoad off =
                new BenchLoad("2ohm", 2, List.of(new LoadBranch(2.2, 0, 0, ""), new LoadBranch(2, 0, 0, "")), 200);
        assertTrue(only(project.withLoads(List.of(project.loads().get(0), off)))
                .what()
                .contains("more than 5 %"));
        BenchLoad single = new BenchLoad("4ohm", 4, List.of(new LoadBranch(4, 0, 0, "")), 200);
        assertTrue(only(project.withLoads(List.of(single, project.loads().get(1))))
                .what()
                .contains("needs 2 resistances"));
    }

    @Test
    void aBranchSaysNothingOfHeatAndLeadsUnlessItIsTold() {
        LoadBranch cold = new LoadBranch(4, 0.01, 0, "");
        assertEquals(new LoadBranch(4, 0.01, 0, "", 0, 0), cold);
        assertThrows(IllegalArgumentException.class, () -> cold.withHeatingRatio(-0.01));
        assertThrows(IllegalArgumentException.class, () -> cold.withHeatingRatio(1.01));
        assertThrows(IllegalArgumentException.class, () -> cold.withLeadStandardUncertaintyOhms(-1e-6));
        assertThrows(IllegalArgumentException.class, () -> cold.withLeadStandardUncertaintyOhms(Double.NaN));
    }

    @Test
    void doubtsALoadThatChangesByMoreThanHalfWhenHot() {
        Project project = SampleProject.sound();
        BenchLoad load = project.loads().get(0);
        LoadBranch branch = load.branches().get(0);
        Project half = project.withLoads(List.of(
                load.withBranches(List.of(branch, branch.withHeatingRatio(0.5))),
                project.loads().get(1)));
        assertEquals(List.of(), ProjectChecks.check(half, LocalDate.of(2026, 3, 2)));
        Problem problem = only(project.withLoads(List.of(
                load.withBranches(List.of(branch, branch.withHeatingRatio(0.6))),
                project.loads().get(1))));
        assertEquals("$.loads[0].branches[1].heatingRatio", problem.where());
        assertEquals(Severity.WARNING, problem.severity());
        assertTrue(problem.what().contains("up to 60.0 % when it is hot, more than 50 %"), problem.what());
    }

    @Test
    void overdueIsAfterTheLastDay() {
        Meter meter = SampleProject.sound().bench().meters().get(0);
        assertFalse(meter.isOverdueOn(LocalDate.of(2027, 1, 15)));
        assertTrue(meter.isOverdueOn(LocalDate.of(2027, 1, 16)));
        Meter unknown =
                new Meter("m", meter.quantity(), "m", "", meter.accuracy(), Optional.empty(), Optional.empty(), "");
        assertFalse(unknown.isOverdueOn(LocalDate.of(2099, 1, 1)));
    }

    private static Problem only(Project project) {
        List<Problem> problems = ProjectChecks.check(project, LocalDate.of(2026, 3, 2));
        assertEquals(1, problems.size(), problems.toString());
        return problems.get(0);
    }

    private static List<Step> with(List<Step> plan, Step more) {
        List<Step> steps = new ArrayList<>(plan);
        steps.add(more);
        return steps;
    }

    @Test
    void aRangeIsKnownWhenItsEndsMeet() {
        assertEquals(0.6, new Range(0.5, 0.7).middle(), 1e-15);
        assertTrue(Range.of(3).known());
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> new Range(2, 1));
        assertEquals("high is 1.0; it must be at least low, which is 2.0", refused.getMessage());
    }

    @Test
    void saysThatARestLiesBeforeAStepThatIsNotThere() {
        Project project = SampleProject.sound();
        Pacing pacing = project.heat().pacing();
        assertEquals(60, pacing.restSecondsBefore("s1").orElseThrow());
        Project lost = project.withHeat(project.heat().withPacing(pacing.withRests(List.of(new Rest("s9", 5)))));
        List<Problem> problems = ProjectChecks.check(lost, LocalDate.of(2025, 7, 1));
        assertTrue(
                problems.stream()
                        .anyMatch(problem -> problem.where().equals("$.heat.pacing.rests[0].stepId")
                                && problem.what().contains("\"s9\"")),
                problems.toString());
    }
}
