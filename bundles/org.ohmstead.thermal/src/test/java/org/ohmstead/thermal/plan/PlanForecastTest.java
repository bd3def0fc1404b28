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
import org.ohmstead.model.Fuse;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.SinkSize;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SupplyLimits;
import org.ohmstead.thermal.FuseAnswer;
import org.ohmstead.thermal.HeatModel;

class PlanForecastTest {
    private static final double WATTS = 1e-5;

    private static PlanForecast of(Project project) {
        return PlanForecast.of(project, TestProject.SHARING);
    }

    private static PlanForecast known(Project project, double watts) {
        return PlanForecast.of(
                project, TestProject.SHARING, step -> Optional.of(new KnownPower(watts, OptionalDouble.empty())));
    }

    private static double watts(PlanForecast forecast, int job, String source) {
        ScheduleTask task = forecast.task().orElseThrow();
        return task.jobs().get(job).watts().get(task.model().sourceIndex(source));
    }

    @Test
    void heatsTheAmplifierAsTheClosedFormSays() {
        // Class B on rails of 30 V into 4 ohm: 28.125 W out make 43.494724 W of heat in each channel, 71.619724 W in
        // (closed form P_in = 2 m V^2 / (pi R) with m = 0.5).
        PlanForecast forecast = known(TestProject.only(TestProject.step("s", Mode.STEREO, "4ohm", 14.4)), 28.125);
        assertEquals(2 * 43.494724, forecast.steps().get(0).heatWatts().high(), WATTS);
        assertEquals(2 * 43.494724, watts(forecast, 0, "amplifier"), WATTS);
        // The load of 4 ohm is two parts of 8 ohm side by side.
        assertEquals(28.125 / 2, watts(forecast, 0, "part.8R"), WATTS);
        assertEquals(
                2 * 71.619724 / 14.4,
                forecast.steps().get(0).current().orElseThrow().averageAmps(),
                1e-6);
    }

    @Test
    void lowersTheRailsWithTheSupplyOfAnUnregulatedAmplifier() {
        // At 7.2 V the rails are at 15 V and m is 0.5 for a quarter of the power: everything is a quarter.
        PlanForecast forecast = known(TestProject.only(TestProject.step("s", Mode.STEREO, "4ohm", 7.2)), 28.125 / 4);
        assertEquals(2 * 43.494724 / 4, forecast.steps().get(0).heatWatts().high(), WATTS);
    }

    @Test
    void takesMeasuredInputPowerInstead() {
        PlanForecast forecast = PlanForecast.of(
                TestProject.only(TestProject.step("s", Mode.STEREO, "4ohm", 14.4)),
                TestProject.SHARING,
                step -> Optional.of(new KnownPower(50, OptionalDouble.of(160))));
        // 160 W in less 2 x 50 W out.
        assertEquals(60, forecast.steps().get(0).heatWatts().high(), WATTS);
    }

    @Test
    void warmsUpAtAnEighthOfRatedPowerForAnHourFirst() {
        Project project = TestProject.sound()
                .withAmplifier(TestProject.sound()
                        .amplifier()
                        .withRatings(List.of(TestProject.rating("r", Mode.STEREO, 4, 112.5, 14.4))))
                .withPlan(List.of(
                        TestProject.step("a", Mode.STEREO, "4ohm", 14.4),
                        TestProject.step("b", Mode.BRIDGED, "8ohm", 12)));
        PlanForecast forecast = of(TestProject.withPacing(project, 20, 5, true));
        // 16 CFR 432.3(c). 14.0625 W of 112.5 W on rails of 30 V into 4 ohm make 36.580293 W of heat in each channel.
        assertEquals(PlanForecast.WARM_UP, forecast.steps().get(0).jobId());
        assertEquals(2 * 36.580293, watts(forecast, 0, "amplifier"), WATTS);
        ScheduleTask task = forecast.task().orElseThrow();
        assertEquals(3600, task.jobs().get(0).onSeconds());
        assertTrue(task.precedence().containsAll(List.of(new Before(0, 1), new Before(0, 2), new Before(1, 2))));
        assertTrue(forecast.notes().contains(WarmUp.note()));
    }

    @Test
    void drawsTheMeanOfBurstsAndAllowsForTheirSwing() {
        Step step =
                TestProject.step("s", Mode.STEREO, "4ohm", 14.4).withStimulus(new Stimulus.ToneBurst(1000, 2, 10, -20));
        PlanForecast forecast = known(TestProject.only(step), 90);
        // Mean of a burst: P [D + (1 - D) 10^(L/10)].
        assertEquals(2 * 90 * (0.2 + 0.8 * 0.01), forecast.steps().get(0).outputWatts(), WATTS);
        assertEquals(45 * (0.2 + 0.8 * 0.01), watts(forecast, 0, "part.8R"), WATTS);
        ScheduleTask task = forecast.task().orElseThrow();
        HeatModel model = task.model();
        int point = model.pointIndex("part.8R.rating");
        double ripple = task.jobs().get(0).rippleKelvin().get("part.8R.rating");
        // The hottest spot by 0.9 K/W, from small steps of its own equation: 45 W for 2 s, 0.45 W for 8 s, again and
        // again.
        double tau = model.tauSeconds(model.modeCount() - 2);
        double rise = 0;
        double mean = 0;
        double worst = 0;
        double stride = 0.0005;
        for (int i = 0; i < 600_000; i++) {
            double now = i % 20_000 < 4_000 ? 45 : 0.45;
            rise += stride * (0.9 * now - rise) / tau;
            mean += stride * (0.9 * 45 * 0.208 - mean) / tau;
            worst = Math.max(worst, rise - mean);
        }
        assertEquals(
                30, tau, 1e-9, "time constant of " + model.points().get(point).name());
        assertTrue(ripple >= worst - 1e-3, ripple + " K allowed, " + worst + " K found");
        assertTrue(ripple <= 2 * worst, ripple + " K allowed, " + worst + " K found");
    }

    @Test
    void ordersStereoFirstAndRisingVoltsWithinALoad() {
        ScheduleTask task = of(TestProject.sound()).task().orElseThrow();
        Schedule schedule =
                assertInstanceOf(Schedule.class, Scheduler.run(task, SearchEffort.USUAL, () -> false, done -> {}));
        List<String> ids = schedule.jobs().stream().map(ScheduledJob::id).toList();
        assertTrue(ids.subList(0, 12).stream().allMatch(id -> id.startsWith("stereo")));
        for (String load : List.of("stereo-2ohm-", "stereo-4ohm-", "stereo-8ohm-", "bridged-4ohm-", "bridged-8ohm-")) {
            int last = -1;
            for (String volts : List.of("11.0", "12.6", "13.8", "14.4")) {
                int place = ids.indexOf(load + volts);
                assertTrue(place > last, load + volts);
                last = place;
            }
        }
        assertTrue(schedule.gapRatio() <= 0.1, "gap " + schedule.gapRatio());
        // Three changes of the load, one of the mode, three of the volts for each of the five loads.
        assertEquals(3 * 120 + 180 + 15 * 10, schedule.changeSeconds(), 1e-6);
    }

    @Test
    void saysWhatItHadToEstimate() {
        Project project = TestProject.withFacts(TestProject.sound(), AmplifierHeat.NONE);
        PlanForecast nothing = of(project.withBench(project.bench().withAmbientCelsius(OptionalDouble.empty())));
        assertTrue(nothing.notes().stream().anyMatch(note -> note.contains("air is not known")));
        assertTrue(nothing.problems().stream()
                .anyMatch(problem -> problem.where().equals("$.heat.amplifier.caseKelvinPerWatt")));
        assertEquals(-1, nothing.task().orElseThrow().model().pointIndex("case.least"));
        Project sink = project.withAmplifier(project.amplifier().withHeatSinkKelvinPerWatt(OptionalDouble.of(0.6)));
        PlanForecast some = of(sink);
        assertTrue(some.notes().stream().anyMatch(note -> note.contains("time constant of 10 to 40 minutes")));
        assertTrue(some.notes().stream().anyMatch(note -> note.contains("80 degrees Celsius")));
        HeatModel model = some.task().orElseThrow().model();
        double[] state = model.settled(ones(model));
        // One watt through 0.6 K/W.
        assertEquals(0.6, model.riseKelvin(model.pointIndex("case.most"), state, ones(model)), 1e-12);
    }

    private static double[] ones(HeatModel model) {
        double[] watts = new double[model.sources().size()];
        watts[model.sourceIndex("amplifier")] = 1;
        return watts;
    }

    @Test
    void estimatesTheCaseFromItsSize() {
        AmplifierHeat none = AmplifierHeat.NONE;
        AmplifierHeat sized = new AmplifierHeat(
                none.outputClass(),
                none.railVolts(),
                none.railSupplyVolts(),
                none.converterEfficiencyRatio(),
                none.idleWatts(),
                none.caseKelvinPerWatt(),
                none.caseJoulesPerKelvin(),
                none.deviceKelvinPerWatt(),
                none.deviceLimitCelsius(),
                OptionalDouble.of(75),
                Optional.of(new SinkSize(0.2, 0.2, 0, 0, 0.002, 0.9)));
        PlanForecast forecast = of(TestProject.withFacts(TestProject.sound(), sized));
        HeatModel model = forecast.task().orElseThrow().model();
        double kelvin = model.riseKelvin(model.pointIndex("case.least"), model.settled(ones(model)), ones(model));
        // A plate of 0.2 x 0.2 m, both faces, at 75 degrees in air of 25: 0.993942 K/W by the handbook's simple form;
        // its doubt is 10 %,
        // other forms differ by some more.
        assertEquals(0.993942, kelvin, 0.25);
        assertTrue(kelvin > 0.993942, "the cautious end of the range");
        assertTrue(forecast.notes().stream().anyMatch(note -> note.contains("estimated from its size")));
    }

    @Test
    void findsWhatSupplyFusesAndLoadCannotTake() {
        Project project = TestProject.only(TestProject.step("s", Mode.STEREO, "2ohm", 14.4));
        PlanForecast forecast = known(project, 200);
        // m = sqrt(2 x 200 x 2) / 30 = 0.942809; 2 channels take 2 x 2 m 900 / (2 pi) W = 540.190 W, 37.513 A.
        double amps = 2 * 2 * Math.sqrt(800) * 30 / (2 * Math.PI) / 14.4;
        assertEquals(amps, forecast.steps().get(0).loudAmps(), 1e-6);
        assertTrue(forecast.problems().isEmpty(), forecast.problems().toString());
        assertInstanceOf(
                FuseAnswer.Carries.class, forecast.steps().get(0).fuse().orElseThrow());

        Project weak = project.withBench(
                project.bench().withSupply(project.bench().supply().withCurrentLimitAmps(30)));
        assertTrue(said(known(weak, 200), "$.plan[0]", "more than the 30 A").isPresent());
        Project near = project.withBench(
                project.bench().withSupply(project.bench().supply().withCurrentLimitAmps(40)));
        assertTrue(said(known(near, 200), "$.plan[0]", "too near to the 40").isPresent());
        Project low = project.withBench(
                project.bench().withSupply(project.bench().supply().withHighestVolts(14.42)));
        assertTrue(said(known(low, 200), "$.plan[0].supplyVolts", "it goes up to 14.4")
                .isPresent());
        Project small = project.withLoads(List.of(TestProject.load("2ohm", 2).withPowerLimitWatts(150)));
        assertTrue(said(known(small, 200), "$.plan[0]", "which can take 150 W").isPresent());
        Project fused = project.withAmplifier(project.amplifier().withFuses(List.of(new Fuse(25, "blade", ""))));
        assertTrue(said(known(fused, 200), "$.plan[0]", "opens").isPresent());
        Project longLasting = project.withHeat(project.heat()
                .withSupply(new SupplyLimits(
                        false,
                        OptionalDouble.empty(),
                        OptionalDouble.of(35),
                        OptionalDouble.empty(),
                        OptionalDouble.empty())));
        assertTrue(said(known(longLasting, 200), "$.plan[0]", "for long").isPresent());
    }

    /** A rating of 4 ohm tells of 2 ohm no more than a bound: twice the power, if nothing gives way. */
    @Test
    void anUpperBoundWarnsAndForbidsNothing() {
        Project project = TestProject.only(TestProject.step("s", Mode.STEREO, "2ohm", 14.4));
        Project weak = project.withAmplifier(project.amplifier()
                        .withRatings(List.of(TestProject.rating("r", Mode.STEREO, 4, 90, 14.4)))
                        .withFuses(List.of(new Fuse(10, "blade", ""))))
                .withBench(project.bench().withSupply(project.bench().supply().withCurrentLimitAmps(20)));
        PlanForecast bound = PlanForecast.of(weak, TestProject.SHARING);
        assertEquals(
                ExpectedPower.Basis.OTHER_LOAD, bound.steps().get(0).power().basis());
        assertEquals(180, bound.steps().get(0).power().watts().orElseThrow(), 1e-9);
        assertTrue(said(bound, "$.plan[0]", "more than the 20").isPresent());
        assertTrue(said(bound, "$.plan[0]", "opens").isPresent());
        assertEquals(0, errors(bound));
        assertTrue(errors(known(weak, 180)) >= 2);
    }

    private static long errors(PlanForecast forecast) {
        return forecast.problems().stream()
                .filter(problem -> problem.severity() == Severity.ERROR)
                .count();
    }

    private static Optional<String> said(PlanForecast forecast, String where, String words) {
        return forecast.problems().stream()
                .filter(problem ->
                        problem.where().equals(where) && problem.what().contains(words))
                .map(problem -> problem.what())
                .findFirst();
    }

    @Test
    void warnsOfAStepOfUnknownPower() {
        Project project = TestProject.only(TestProject.step("s", Mode.STEREO, "4ohm", 14.4));
        PlanForecast forecast = of(project.withAmplifier(project.amplifier().withRatings(List.of())));
        assertTrue(said(forecast, "$.plan[0]", "No power is known").isPresent());
        assertEquals(0, watts(forecast, 0, "amplifier"), 0);
        assertTrue(forecast.steps().get(0).current().isEmpty());
    }

    @Test
    void hasNoTaskWithoutSteps() {
        PlanForecast forecast = of(TestProject.sound().withPlan(List.of()));
        assertTrue(forecast.task().isEmpty());
        assertTrue(
                StopLimits.of(forecast).stream().allMatch(limit -> limit.quantity() == StopLimit.Quantity.SUPPLY_AMPS));
    }
}
