// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SchedulerTest {
    private static final SearchEffort LITTLE = new SearchEffort(5, 300, Duration.ofMinutes(5));

    /** 1.2 K/W and 500 J/K: a time constant of 600 s. */
    private static TestPlant oneBody(double limitCelsius) {
        TestPlant plant = new TestPlant(1);
        plant.point(limitCelsius, new double[1], plant.mode(600, 1.2), 1);
        return plant;
    }

    private static ScheduleAnswer run(ScheduleTask task, SearchEffort effort) {
        return Scheduler.run(task, effort, () -> false, done -> {});
    }

    private static Schedule schedule(ScheduleTask task) {
        return assertInstanceOf(Schedule.class, run(task, LITTLE));
    }

    @Test
    void restsAsLongAsTheClosedFormSays() {
        // 100 W for 300 s from 25 degrees, limit 90: z = 120 (1 - e^-0.5) after the first; the second may begin at y
        // with
        // y e^-0.5 + 120 (1 - e^-0.5) = 65, so that it rests 600 ln(z / y).
        double end = 120 * (1 - Math.exp(-0.5));
        double begin = (65 - end) / Math.exp(-0.5);
        ScheduleTask task = ScheduleTask.of(
                oneBody(90).model(),
                25,
                0,
                List.of(HeatJob.of("a", 300, List.of(100.0)), HeatJob.of("b", 300, List.of(100.0))));
        Schedule schedule = schedule(task);
        assertEquals(0, schedule.jobs().get(0).restSeconds(), 0);
        assertEquals(600 * Math.log(end / begin), schedule.jobs().get(1).restSeconds(), 1e-5);
        assertEquals(ScheduledJob.Cause.LIMIT, schedule.jobs().get(1).cause());
        assertEquals(Optional.of("p0"), schedule.jobs().get(1).limitPointId());
        assertEquals(25 + end, schedule.jobs().get(0).peakCelsius().get(0), 1e-9);
        assertEquals(90, schedule.jobs().get(1).peakCelsius().get(0), 1e-6);
        assertEquals(600, schedule.onSeconds(), 0);
        assertEquals(60_000, schedule.energyJoules(), 1e-6);
        assertTrue(schedule.provenShortest());
    }

    @Test
    void staysOnExactlyAsLongAsTheBodyAllowsFromCold() {
        // Closed form: from 25 to 90 degrees with 100 W takes -600 ln(1 - 65/120) = 468.095135 s.
        HeatJob just = HeatJob.of("a", 468.0951, List.of(100.0));
        HeatJob tooLong = HeatJob.of("a", 468.0952, List.of(100.0));
        assertEquals(
                468.0951,
                schedule(ScheduleTask.of(oneBody(90).model(), 25, 0, List.of(just)))
                        .totalSeconds());
        Impossible impossible = assertInstanceOf(
                Impossible.class, run(ScheduleTask.of(oneBody(90).model(), 25, 0, List.of(tooLong)), LITTLE));
        Obstacle obstacle = impossible.obstacles().get(0);
        assertEquals(Obstacle.Reason.JOB, obstacle.reason());
        assertEquals(Optional.of("a"), obstacle.jobId());
        assertTrue(obstacle.remedy().contains("at most 7.8 min"), obstacle.remedy());
    }

    @Test
    void saysByHowMuchAJobIsTooHot() {
        // Closed form: 200 W for ever lead to 25 + 240; after 600 s to 25 + 240 (1 - 1/e) = 176.709 degrees.
        ScheduleTask task =
                ScheduleTask.of(oneBody(90).model(), 25, 5, List.of(HeatJob.of("hot", 600, List.of(200.0))));
        Obstacle obstacle = assertInstanceOf(Impossible.class, run(task, LITTLE))
                .obstacles()
                .get(0);
        assertEquals(25 + 240 * (1 - Math.exp(-1)) - 85, obstacle.excessKelvin(), 1e-6);
        assertTrue(obstacle.what().contains("\"hot\"") && obstacle.what().contains("body 0"), obstacle.what());
    }

    @Test
    void saysThatTheAirIsTooWarm() {
        ScheduleTask task = ScheduleTask.of(oneBody(60).model(), 58, 5, List.of(HeatJob.of("a", 1, List.of(0.0))));
        Obstacle obstacle = assertInstanceOf(Impossible.class, run(task, LITTLE))
                .obstacles()
                .get(0);
        assertEquals(Obstacle.Reason.AMBIENT, obstacle.reason());
        assertEquals(3, obstacle.excessKelvin(), 1e-6);
    }

    @Test
    void saysThatIdlingAloneIsTooWarm() {
        ScheduleTask task = ScheduleTask.of(oneBody(60).model(), 25, 0, List.of(HeatJob.of("a", 1, List.of(40.0))))
                .withIdle(List.of(30.0), 40);
        // 30 W x 1.2 K/W = 36 K, one more than there is room for.
        Obstacle obstacle = assertInstanceOf(Impossible.class, run(task, LITTLE))
                .obstacles()
                .get(0);
        assertEquals(Obstacle.Reason.IDLE, obstacle.reason());
        assertEquals(1, obstacle.excessKelvin(), 1e-6);
    }

    @Test
    void saysThatAnOrderIsImpossibleWhereAnotherIsNot() {
        // From cold "hot" holds, from where idling leads it never does: it has to come first.
        HeatJob mild = HeatJob.of("mild", 1200, List.of(20.0));
        HeatJob hot = HeatJob.of("hot", 400, List.of(100.0));
        ScheduleTask task =
                ScheduleTask.of(oneBody(84).model(), 25, 0, List.of(mild, hot)).withIdle(List.of(20.0), 25);
        assertEquals(List.of(1, 0), schedule(task).order());
        Obstacle obstacle = assertInstanceOf(
                        Impossible.class, run(task.withFixedOrder(Optional.of(List.of(0, 1))), LITTLE))
                .obstacles()
                .get(0);
        assertEquals(Obstacle.Reason.ORDER, obstacle.reason());
        assertEquals(Optional.of("hot"), obstacle.jobId());
    }

    @Test
    void letsAWarmStartCoolDownFirst() {
        // Closed form: cooling from 90 to 40 degrees in air of 25 takes 600 ln(65/15) = 879.802241 s; the job adds
        // nothing.
        ScheduleTask task = ScheduleTask.of(oneBody(40).model(), 25, 0, List.of(HeatJob.of("a", 10, List.of(0.0))))
                .withStartState(List.of(65.0));
        assertEquals(879.802241, schedule(task).jobs().get(0).restSeconds(), 1e-5);
    }

    @Test
    void waitsForAPointThatIsWarmestAfterItsSourceIsOff() {
        TestPlant plant = new TestPlant(1);
        int slow = plant.mode(500, 1);
        int fast = plant.mode(100, 1);
        plant.point(60, new double[1], slow, 500.0 / 400, fast, -100.0 / 400);
        List<HeatJob> jobs = IntStream.range(0, 4)
                .mapToObj(i -> HeatJob.of("s" + i, 60, List.of(150.0)))
                .toList();
        ScheduleTask task = ScheduleTask.of(plant.model(), 25, 0, jobs);
        Schedule schedule = schedule(task);
        assertTrue(plant.worstExcess(task, schedule) <= 1e-6);
        assertTrue(plant.worstExcess(task, schedule) > -1e-3, "it should rest no longer than needed");
        assertTrue(schedule.restSeconds() > 0);
        assertTrue(!schedule.restsProvenShortest());
    }

    @Test
    void keepsEveryLimitInAThousandRandomPlans() {
        SplittableRandom random = new SplittableRandom(2024);
        int scheduled = 0;
        int rested = 0;
        for (int round = 0; round < 1000; round++) {
            TestPlant plant = TestPlant.bench(random, round % 4 == 0);
            ScheduleTask task = RandomTask.of(random, plant, 3 + random.nextInt(10));
            ScheduleAnswer answer = run(task, new SearchEffort(round, 60, Duration.ofMinutes(5)));
            if (answer instanceof Schedule schedule) {
                scheduled++;
                rested += schedule.restSeconds() > 0 ? 1 : 0;
                // The integration is good to about 1e-6 K.
                double excess = plant.worstExcess(task, schedule);
                assertTrue(excess <= 1e-5, "round " + round + ": " + excess + " K");
                assertTrue(schedule.lowerBoundSeconds() <= schedule.totalSeconds() + 1e-9, "round " + round);
                checkOrder(task, schedule);
            }
        }
        assertTrue(scheduled > 500, scheduled + " plans are possible");
        assertTrue(rested > 300, rested + " plans need rests");
    }

    private static void checkOrder(ScheduleTask task, Schedule schedule) {
        List<Integer> order = schedule.order();
        assertEquals(task.jobs().size(), order.stream().distinct().count());
        for (Before pair : task.precedence()) {
            assertTrue(order.indexOf(pair.earlier()) < order.indexOf(pair.later()));
        }
        double sum = schedule.onSeconds() + schedule.changeSeconds() + schedule.restSeconds();
        assertEquals(schedule.totalSeconds(), sum, 1e-6);
        for (ScheduledJob job : schedule.jobs()) {
            assertTrue(job.restSeconds() >= task.jobs().get(job.job()).leastRestSeconds());
        }
    }

    @Test
    void givesTheSameAnswerAgain() {
        for (int seed = 0; seed < 5; seed++) {
            TestPlant plant = TestPlant.bench(new SplittableRandom(seed), false);
            ScheduleTask task = RandomTask.of(new SplittableRandom(seed), plant, 30);
            SearchEffort effort = new SearchEffort(7, 500, Duration.ofMinutes(5));
            assertEquals(run(task, effort), run(task, effort));
        }
    }

    @Test
    void endsWhenItIsCancelledAndStillKeepsTheLimits() {
        TestPlant plant = TestPlant.bench(new SplittableRandom(3), false);
        ScheduleTask task = RandomTask.of(new SplittableRandom(3), plant, 60);
        AtomicInteger asked = new AtomicInteger();
        ScheduleAnswer answer = Scheduler.run(
                task,
                new SearchEffort(1, 1_000_000, Duration.ofMinutes(5)),
                () -> asked.incrementAndGet() > 200,
                done -> assertTrue(done >= 0 && done <= 1));
        Schedule schedule = assertInstanceOf(Schedule.class, answer);
        assertEquals(Schedule.Ending.CANCELLED, schedule.ending());
        assertTrue(asked.get() < 500, asked + " times asked");
        assertTrue(plant.worstExcess(task, schedule) <= 1e-5);
    }

    @Test
    void schedulesTwoHundredStepsWithinItsTrials() {
        TestPlant plant = TestPlant.bench(new SplittableRandom(4), false);
        ScheduleTask task = RandomTask.of(new SplittableRandom(4), plant, 200);
        AtomicInteger told = new AtomicInteger();
        Schedule schedule = assertInstanceOf(
                Schedule.class,
                Scheduler.run(
                        task,
                        new SearchEffort(1, 640, Duration.ofHours(1)),
                        () -> false,
                        done -> told.incrementAndGet()));
        assertEquals(Schedule.Ending.COMPLETE, schedule.ending());
        // It tells its progress every 64 trials, and once more at the end.
        assertTrue(told.get() >= 1 && told.get() <= 640 / 64 + 1, told + " times told");
        checkOrder(task, schedule);
        assertTrue(schedule.gapRatio() < 0.25, "gap " + schedule.gapRatio());
    }

    @Test
    void looksAtNoMoreOrdersThanItIsAllowed() {
        TestPlant plant = TestPlant.bench(new SplittableRandom(12), false);
        ScheduleTask task = RandomTask.of(new SplittableRandom(12), plant, 80);
        Plant cut = PlantCut.of(Plant.of(task));
        OrderTable table = new OrderTable(task);
        OrderTrial trial = new OrderTrial(cut, table, new HeatBound(cut, table.precedence));
        Stop stop = new Stop(() -> false, done -> {}, Duration.ofHours(1));
        LocalSearch search = new LocalSearch(table, trial, new SearchEffort(1, 500, Duration.ofHours(1)), stop, 0);
        int[] given = new FirstOrders(cut, table).asGiven();
        double before = trial.take(given);
        double after = trial.take(search.better(given));
        assertTrue(search.trials() > 0 && search.trials() <= 500, search.trials() + " trials");
        assertTrue(after <= before + 1e-6, after + " s after " + before + " s");
    }

    @Test
    void bettersWhatIsGivenInAPoorOrder() {
        TestPlant plant = oneBody(80);
        List<HeatJob> jobs = new ArrayList<>();
        List<RandomTask.Wiring> wirings = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            jobs.add(HeatJob.of("s" + i, 20, List.of(40.0 + i)));
            wirings.add(new RandomTask.Wiring(0, i % 3, i % 4));
        }
        ScheduleTask task = ScheduleTask.of(plant.model(), 25, 0, jobs)
                .withChanges(ChangeOvers.of(wirings, RandomTask.Wiring::secondsTo, any -> 0));
        Schedule given = schedule(
                task.withFixedOrder(Optional.of(IntStream.range(0, 24).boxed().toList())));
        Schedule found = schedule(task);
        // Closed form: three loads of four supply volts each are two changes of the load and nine of the supply.
        assertEquals(2 * 60 + 9 * 10, found.changeSeconds(), 1e-9);
        assertTrue(found.totalSeconds() < given.totalSeconds() / 2);
        assertTrue(found.gapRatio() < 0.01, "gap " + found.gapRatio());
    }

    @Test
    void letsStressRiseWhereThatCostsNothing() {
        List<HeatJob> jobs = new ArrayList<>();
        for (double stress : new double[] {3, 1, 4, 1.5, 9, 2.6, 5, 3.5, 8, 9.7, 9.3, 2.3, 8.4, 6, 2.5, 7}) {
            jobs.add(new HeatJob("s" + stress, 10, List.of(10.0), Map.of(), 0, 0, stress));
        }
        ScheduleTask task = ScheduleTask.of(oneBody(80).model(), 25, 0, jobs);
        List<Double> stresses = schedule(task).order().stream()
                .map(job -> jobs.get(job).stress())
                .toList();
        assertEquals(stresses.stream().sorted().toList(), stresses);
    }

    @Test
    void rejectsWhatMakesNoSense() {
        TestPlant plant = oneBody(80);
        List<HeatJob> jobs = List.of(HeatJob.of("a", 10, List.of(10.0)), HeatJob.of("b", 10, List.of(10.0)));
        ScheduleTask task = ScheduleTask.of(plant.model(), 25, 0, jobs);
        assertThrows(IllegalArgumentException.class, () -> HeatJob.of("a", 0, List.of(1.0)));
        assertThrows(IllegalArgumentException.class, () -> HeatJob.of("a", 1, List.of(-1.0)));
        assertThrows(IllegalArgumentException.class, () -> ScheduleTask.of(plant.model(), 25, -1, jobs));
        assertThrows(IllegalArgumentException.class, () -> ScheduleTask.of(plant.model(), Double.NaN, 0, jobs));
        assertThrows(IllegalArgumentException.class, () -> ScheduleTask.of(plant.model(), 25, 0, List.of()));
        assertThrows(
                IllegalArgumentException.class,
                () -> ScheduleTask.of(plant.model(), 25, 0, List.of(HeatJob.of("a", 10, List.of(1.0, 2.0)))));
        assertThrows(
                IllegalArgumentException.class, () -> task.withPrecedence(List.of(new Before(0, 1), new Before(1, 0))));
        assertThrows(IllegalArgumentException.class, () -> task.withFixedOrder(Optional.of(List.of(0, 0))));
        assertThrows(IllegalArgumentException.class, () -> task.withStartState(List.of(1.0, 2.0)));
        assertThrows(IllegalArgumentException.class, () -> new Before(1, 1));
        assertThrows(IllegalArgumentException.class, () -> new SearchEffort(1, 1, Duration.ZERO));
    }
}
