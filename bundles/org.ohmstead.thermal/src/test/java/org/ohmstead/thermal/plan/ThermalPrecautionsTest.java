// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.SupplyLimits;
import org.ohmstead.thermal.SupplyCautions;

class ThermalPrecautionsTest {
    private static List<Problem> of(Project project) {
        PlanForecast forecast = PlanForecast.of(project, TestProject.SHARING);
        Optional<ScheduleAnswer> answer =
                forecast.task().map(task -> Scheduler.run(task, SearchEffort.USUAL, () -> false, done -> {}));
        return ThermalPrecautions.of(forecast, answer);
    }

    @Test
    void hasNothingToSayOfASoundPlan() {
        assertEquals(List.of(), of(TestProject.sound()));
    }

    @Test
    void namesTheStepThatIsTooHotOnceForAllCopiesOfTheCase() {
        Project project = TestProject.withPacing(
                TestProject.only(TestProject.step("s", Mode.STEREO, "2ohm", 14.4)), 1200, 5, false);
        List<Problem> problems = of(project);
        List<Problem> cases = problems.stream()
                .filter(problem -> problem.what().contains("case of the amplifier"))
                .toList();
        assertEquals(1, cases.size(), problems.toString());
        assertEquals("$.plan[0]", cases.get(0).where());
        assertEquals(Severity.ERROR, cases.get(0).severity());
        assertTrue(
                cases.get(0).remedy().startsWith("Keep it on for at most"),
                cases.get(0).remedy());
    }

    @Test
    void pointsAtTheAirWhenThatIsTooWarm() {
        Project project = TestProject.sound();
        List<Problem> problems = of(project.withBench(project.bench().withAmbientCelsius(OptionalDouble.of(78))));
        assertTrue(problems.stream()
                .anyMatch(problem -> problem.where().equals("$.bench.ambientCelsius")
                        && problem.what().contains("leaves no room")));
    }

    @Test
    void saysThatACableIsTooThinForTheLoad() {
        Project project = TestProject.withPacing(
                TestProject.only(TestProject.step("s", Mode.STEREO, "2ohm", 14.4)), 120, 5, false);
        List<Problem> problems =
                of(project.withBench(project.bench().withCable(new Cable(1, 1, OptionalDouble.empty()))));
        Problem cable = problems.stream()
                .filter(problem -> problem.what().contains("cable to the supply"))
                .findFirst()
                .orElseThrow();
        assertEquals("$.plan[0]", cable.where());
        assertEquals(Severity.ERROR, cable.severity());
    }

    @Test
    void cautionsABattery() {
        Project project = TestProject.sound();
        SupplyLimits battery = new SupplyLimits(
                true, OptionalDouble.of(0.01), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
        assertTrue(of(project.withHeat(project.heat().withSupply(battery))).stream()
                .anyMatch(problem -> problem.where().equals("$.heat.supply.battery")
                        && problem.remedy().equals(SupplyCautions.batteries())));
    }

    @Test
    void stopsTheCaseBeforeTheDevicesAreTooHot() {
        Project project = TestProject.only(TestProject.step("s", Mode.STEREO, "4ohm", 14.4));
        PlanForecast forecast = PlanForecast.of(
                project, TestProject.SHARING, step -> Optional.of(new KnownPower(45.594533, OptionalDouble.empty())));
        // The worst sine of class B: 2 x 45.594533 W of heat; through 0.1 K/W that is 9.1189 K, less than the case's
        // own 70 K.
        List<StopLimit> limits = StopLimits.of(forecast);
        assertEquals(80, limits.get(0).limit(), 0);
        assertEquals("case of the amplifier", limits.get(0).name());
        PlanForecast tight = PlanForecast.of(
                TestProject.withFacts(project, weakDevices()),
                TestProject.SHARING,
                step -> Optional.of(new KnownPower(45.594533, OptionalDouble.empty())));
        assertEquals(85 - 0.1 * 2 * 45.594533, StopLimits.of(tight).get(0).limit(), 1e-5);
        // 75 % of two fuses of 40 A is less than the supply's 100 A.
        StopLimit current = limits.get(limits.size() - 1);
        assertEquals(60, current.limit(), 1e-9);
        assertEquals(StopLimit.Quantity.SUPPLY_AMPS, current.quantity());
    }

    private static AmplifierHeat weakDevices() {
        AmplifierHeat facts = TestProject.facts();
        return new AmplifierHeat(
                facts.outputClass(),
                facts.railVolts(),
                facts.railSupplyVolts(),
                facts.converterEfficiencyRatio(),
                facts.idleWatts(),
                facts.caseKelvinPerWatt(),
                facts.caseJoulesPerKelvin(),
                facts.deviceKelvinPerWatt(),
                OptionalDouble.of(85),
                facts.caseLimitCelsius(),
                facts.sinkSize());
    }

    @Test
    void reschedulesAPlanFromMeasuredTemperatures() {
        Project project = TestProject.withPacing(TestProject.sound(), 60, 5, false);
        ScheduleTask task = PlanForecast.of(project, TestProject.SHARING).task().orElseThrow();
        Schedule whole =
                assertInstanceOf(Schedule.class, Scheduler.run(task, SearchEffort.USUAL, () -> false, done -> {}));
        String first = whole.jobs().get(0).id();
        List<Double> reckoned = Reschedule.stateAfter(task, List.of(new Reschedule.Stretch(Optional.of(first), 60)));
        List<StateEstimate.Measured> measured = List.of(
                new StateEstimate.Measured("case.least", 70, 0.5),
                new StateEstimate.Measured("case.middle", 70, 0.5),
                new StateEstimate.Measured("case.most", 70, 0.5));
        StateEstimate now = StateEstimate.of(task.model(), reckoned, task.idleWatts(), task.ambientCelsius(), measured);
        assertTrue(now.misfitKelvin() < 0.01, now.misfitKelvin() + " K");
        ScheduleTask left =
                Reschedule.remaining(task, List.of(first), now.state()).orElseThrow();
        Schedule rest =
                assertInstanceOf(Schedule.class, Scheduler.run(left, SearchEffort.USUAL, () -> false, done -> {}));
        assertEquals(19, rest.jobs().size());
        assertTrue(rest.totalSeconds()
                >= whole.totalSeconds() - whole.jobs().get(0).endSeconds() - 1e-3);
    }
}
