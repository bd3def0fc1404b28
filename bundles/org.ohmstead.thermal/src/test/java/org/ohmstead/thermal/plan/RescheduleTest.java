// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ohmstead.thermal.HeatModel;

class RescheduleTest {
    private static TestPlant plant() {
        TestPlant plant = new TestPlant(1);
        int slow = plant.mode(600, 1.2);
        int fast = plant.mode(30, 0.3);
        plant.point(80, new double[1], slow, 1);
        plant.point(100, new double[1], slow, 1, fast, 1);
        return plant;
    }

    private static ScheduleTask task() {
        List<HeatJob> jobs = List.of(
                HeatJob.of("a", 120, List.of(100.0)),
                HeatJob.of("b", 120, List.of(100.0)),
                HeatJob.of("c", 120, List.of(100.0)),
                HeatJob.of("d", 120, List.of(100.0)));
        return ScheduleTask.of(plant().model(), 25, 0, jobs)
                .withPrecedence(List.of(new Before(0, 1), new Before(1, 2)))
                .withChanges(ChangeOvers.of(List.of(0, 1, 2, 3), (from, to) -> 10.0 * Math.abs(from - to), any -> 5));
    }

    @Test
    void reckonsTheStateAfterWhatWasDone() {
        List<Double> state = Reschedule.stateAfter(
                task(),
                List.of(new Reschedule.Stretch(Optional.of("a"), 120), new Reschedule.Stretch(Optional.empty(), 60)));
        // Closed form: 120 K (1 - e^(-120/600)) e^(-60/600), 30 K (1 - e^(-120/30)) e^(-60/30).
        assertEquals(120 * (1 - Math.exp(-0.2)) * Math.exp(-0.1), state.get(0), 1e-9);
        assertEquals(30 * (1 - Math.exp(-4)) * Math.exp(-2), state.get(1), 1e-9);
    }

    @Test
    void plansTheRestAsTheWholeWasPlanned() {
        Schedule whole =
                assertInstanceOf(Schedule.class, Scheduler.run(task(), SearchEffort.USUAL, () -> false, done -> {}));
        ScheduledJob first = whole.jobs().get(0);
        List<Double> state = Reschedule.stateAfter(
                task(),
                List.of(
                        new Reschedule.Stretch(Optional.empty(), first.startSeconds()),
                        new Reschedule.Stretch(Optional.of(first.id()), 120)));
        ScheduleTask left =
                Reschedule.remaining(task(), List.of(first.id()), state).orElseThrow();
        Schedule rest =
                assertInstanceOf(Schedule.class, Scheduler.run(left, SearchEffort.USUAL, () -> false, done -> {}));
        assertEquals(whole.totalSeconds() - first.endSeconds(), rest.totalSeconds(), 1e-4);
        assertEquals(3, rest.jobs().size());
    }

    @Test
    void keepsPrecedenceThatLedThroughADoneJob() {
        ScheduleTask left =
                Reschedule.remaining(task(), List.of("b"), List.of(0.0, 0.0)).orElseThrow();
        assertEquals(
                List.of("a", "c", "d"), left.jobs().stream().map(HeatJob::id).toList());
        assertEquals(List.of(new Before(0, 1)), left.precedence());
        assertEquals(List.of(10.0, 10.0, 20.0), left.changes().firstSeconds());
        assertTrue(Reschedule.remaining(task(), List.of("a", "b", "c", "d"), List.of(0.0, 0.0))
                .isEmpty());
        assertThrows(
                IllegalArgumentException.class, () -> Reschedule.remaining(task(), List.of("x"), List.of(0.0, 0.0)));
    }

    @Test
    void restsLongerWhenItIsWarmerThanReckoned() {
        ScheduleTask task = task();
        List<Double> reckoned = Reschedule.stateAfter(task, List.of(new Reschedule.Stretch(Optional.of("a"), 120)));
        HeatModel model = task.model();
        double[] plain = reckoned.stream().mapToDouble(Double::doubleValue).toArray();
        double expected = 25 + model.riseKelvin(0, plain, new double[1]);
        StateEstimate warmer = StateEstimate.of(
                model, reckoned, List.of(0.0), 25, List.of(new StateEstimate.Measured("p0", expected + 8, 0.5)));
        assertEquals(reckoned.get(0) + 8, warmer.state().get(0), 1e-4);
        double asReckoned =
                total(Reschedule.remaining(task, List.of("a"), reckoned).orElseThrow());
        double asMeasured =
                total(Reschedule.remaining(task, List.of("a"), warmer.state()).orElseThrow());
        assertTrue(asMeasured > asReckoned + 10, asMeasured + " s after " + asReckoned + " s");
    }

    private static double total(ScheduleTask task) {
        return assertInstanceOf(Schedule.class, Scheduler.run(task, SearchEffort.USUAL, () -> false, done -> {}))
                .totalSeconds();
    }

    @Test
    void changesSlowModesMostAndInProportionToTheirTimeConstants() {
        // Least sum of d^2 / tau with d1 + d2 = e: d is in proportion to tau.
        StateEstimate estimate = StateEstimate.of(
                task().model(),
                List.of(20.0, 10.0),
                List.of(0.0),
                25,
                List.of(new StateEstimate.Measured("p1", 25 + 30 + 6.3, 0.1)));
        assertEquals(6.3 * 600 / 630, estimate.changeKelvin().get(0), 1e-4);
        assertEquals(6.3 * 30 / 630, estimate.changeKelvin().get(1), 1e-4);
        assertTrue(estimate.misfitKelvin() < 1e-3);
    }

    @Test
    void meetsAllPointsWhenTheyAreEnoughToTell() {
        StateEstimate estimate = StateEstimate.of(
                task().model(),
                List.of(0.0, 0.0),
                List.of(0.0),
                25,
                List.of(new StateEstimate.Measured("p0", 55, 0.1), new StateEstimate.Measured("p1", 68, 0.1)));
        assertEquals(30, estimate.state().get(0), 1e-3);
        assertEquals(13, estimate.state().get(1), 1e-3);
    }

    @Test
    void weighsTemperaturesThatContradictEachOther() {
        // Weighted mean of 50 (0.1 K) and 53 (0.2 K): weights 4 to 1.
        StateEstimate estimate = StateEstimate.of(
                task().model(),
                List.of(20.0, 0.0),
                List.of(0.0),
                25,
                List.of(new StateEstimate.Measured("p0", 50, 0.1), new StateEstimate.Measured("p0", 53, 0.2)));
        assertEquals(25.6, estimate.state().get(0), 1e-3);
        assertEquals(2.4, estimate.misfitKelvin(), 1e-3);
    }

    @Test
    void rejectsAPointThatIsNotThere() {
        List<StateEstimate.Measured> measured = List.of(new StateEstimate.Measured("nowhere", 50, 0.1));
        assertThrows(
                IllegalArgumentException.class,
                () -> StateEstimate.of(task().model(), List.of(0.0, 0.0), List.of(0.0), 25, measured));
    }
}
