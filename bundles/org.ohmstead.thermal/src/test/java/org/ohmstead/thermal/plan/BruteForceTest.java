// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The search and the lower bounds against all orders of few jobs, each with its own simulation. */
class BruteForceTest {
    private final List<int[]> orders = new ArrayList<>();

    /** All orders that keep the pairs. */
    private void fill(int[] order, int place, boolean[] used, List<Before> pairs) {
        if (place == order.length) {
            orders.add(order.clone());
            return;
        }
        for (int job = 0; job < order.length; job++) {
            int candidate = job;
            if (!used[job] && pairs.stream().noneMatch(p -> p.later() == candidate && !used[p.earlier()])) {
                used[job] = true;
                order[place] = job;
                fill(order, place + 1, used, pairs);
                used[job] = false;
            }
        }
    }

    private List<int[]> orders(ScheduleTask task) {
        orders.clear();
        fill(new int[task.jobs().size()], 0, new boolean[task.jobs().size()], task.precedence());
        return orders;
    }

    /**
     * Seconds that an order takes, by bisection over the rest and a grid over the job; infinite when a job is
     * impossible.
     */
    private static double seconds(TestPlant plant, ScheduleTask task, int[] order) {
        double[] state =
                task.startState().stream().mapToDouble(Double::doubleValue).toArray();
        double time = 0;
        for (int place = 0; place < order.length; place++) {
            HeatJob job = task.jobs().get(order[place]);
            double change = place == 0
                    ? 0
                    : task.changes().seconds().get(order[place - 1]).get(order[place]);
            move(plant, state, task.idleWatts(), change);
            double low = job.leastRestSeconds();
            double rest = low;
            if (!holds(plant, task, state, job, low)) {
                double high = 100_000;
                if (!holds(plant, task, state, job, high)) {
                    return Double.POSITIVE_INFINITY;
                }
                for (int i = 0; i < 45; i++) {
                    double middle = (low + high) / 2;
                    if (holds(plant, task, state, job, middle)) {
                        high = middle;
                    } else {
                        low = middle;
                    }
                }
                rest = high;
            }
            move(plant, state, task.idleWatts(), rest);
            move(plant, state, job.watts(), job.onSeconds());
            time += change + rest + job.onSeconds();
        }
        return time;
    }

    private static void move(TestPlant plant, double[] state, List<Double> watts, double seconds) {
        for (int mode = 0; mode < state.length; mode++) {
            double target = 0;
            for (int source = 0; source < plant.sources; source++) {
                target += plant.gain.get(mode)[source] * watts.get(source);
            }
            state[mode] = target + (state[mode] - target) * Math.exp(-seconds / plant.tau.get(mode));
        }
    }

    private static boolean holds(TestPlant plant, ScheduleTask task, double[] state, HeatJob job, double rest) {
        double[] copy = state.clone();
        move(plant, copy, task.idleWatts(), rest);
        int grid = 8;
        for (int i = 0; i <= grid; i++) {
            if (i > 0) {
                move(plant, copy, job.watts(), job.onSeconds() / grid);
            }
            for (int point = 0; point < plant.weight.size(); point++) {
                double celsius = task.ambientCelsius() + job.rippleKelvin().getOrDefault("p" + point, 0.0);
                for (int mode = 0; mode < plant.weight.get(point).length; mode++) {
                    celsius += plant.weight.get(point)[mode] * copy[mode];
                }
                for (int source = 0; source < plant.sources; source++) {
                    celsius += plant.atOnce.get(point)[source] * job.watts().get(source);
                }
                if (celsius > plant.limitCelsius.get(point) - task.marginKelvin()) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Each job but the first two after the one two before it. */
    private static List<Before> chain(int jobs) {
        List<Before> pairs = new ArrayList<>();
        for (int job = 2; job < jobs; job++) {
            pairs.add(new Before(job - 2, job));
        }
        return pairs;
    }

    private static TestPlant quickBody(SplittableRandom random) {
        TestPlant plant = new TestPlant(1);
        int body = plant.mode(100 + 300 * random.nextDouble(), 0.5 + 0.2 * random.nextDouble());
        plant.point(55 + 10 * random.nextDouble(), new double[1], body, 1);
        plant.point(75 + 10 * random.nextDouble(), new double[] {0.15}, body, 1);
        return plant;
    }

    @Test
    void findsTheShortestOfAllOrdersAndBoundsItFromBelow() {
        SplittableRandom random = new SplittableRandom(77);
        int compared = 0;
        int heatCounts = 0;
        int sequenceCounts = 0;
        int tight = 0;
        for (int round = 0; round < 240; round++) {
            // Without handling, and warm from the beginning, it is the heat that decides.
            boolean hot = round % 2 == 1;
            TestPlant plant = hot ? quickBody(random) : TestPlant.bench(random, false);
            ScheduleTask task = RandomTask.of(random, plant, round % 25 == 0 ? 7 : 2 + random.nextInt(4));
            if (hot) {
                task = task.withStartState(List.of(30.0));
                task = round % 4 == 1
                        ? task.withChanges(ChangeOvers.none(task.jobs().size()))
                        : task.withPrecedence(chain(task.jobs().size()));
            }
            double best = Double.POSITIVE_INFINITY;
            for (int[] order : orders(task)) {
                best = Math.min(best, seconds(plant, task, order));
            }
            ScheduleAnswer answer =
                    Scheduler.run(task, new SearchEffort(1, 100, Duration.ofMinutes(5)), () -> false, done -> {});
            if (!(answer instanceof Schedule schedule)) {
                assertTrue(Double.isInfinite(best), "round " + round + ": possible in " + best + " s");
                continue;
            }
            compared++;
            // A grid can miss a peak between its points by very little, and a rest is found to about 1e-6 s.
            assertEquals(best, schedule.totalSeconds(), 1e-3 * best, "round " + round);
            assertTrue(schedule.provenShortest());
            Plant cut = PlantCut.of(Plant.of(task));
            OrderTable table = new OrderTable(task);
            double heat = table.onSum + new HeatBound(cut, table.precedence).idleSeconds();
            assertTrue(heat <= best + 1e-4, "round " + round + ": " + heat + " s of heat, " + best + " s at best");
            double sequence = new SequenceBound(cut, table, new HeatBound(cut, table.precedence)).seconds();
            assertTrue(
                    sequence <= best + 1e-4,
                    "round " + round + ": " + sequence + " s in a row, " + best + " s at best");
            double handling = new ChangeBound(table.between, table.first, table.precedence, 1000).seconds();
            assertTrue(table.onSum + table.restSum + handling <= best + 1e-6, "round " + round);
            tight += hot && best - heat <= 0.01 * best ? 1 : 0;
            sequenceCounts += sequence > Math.max(heat, table.onSum + table.restSum + handling) + 1e-3 ? 1 : 0;
            heatCounts += heat > table.onSum + table.restSum + handling ? 1 : 0;
        }
        assertTrue(compared > 80, compared + " compared");
        assertTrue(heatCounts > 20, heatCounts + " bound by heat");
        assertTrue(sequenceCounts > 3, sequenceCounts + " bound by what must precede a job");
        assertTrue(tight > 30, tight + " bound by heat within 1 %");
    }

    @Test
    void theChangeBoundIsNeverAboveTheCheapestOrderAndMostlyEqual() {
        SplittableRandom random = new SplittableRandom(5);
        int tight = 0;
        for (int round = 0; round < 200; round++) {
            int jobs = 2 + random.nextInt(5);
            double[][] between = new double[jobs][jobs];
            double[] first = new double[jobs];
            for (int i = 0; i < jobs; i++) {
                first[i] = random.nextInt(50);
                for (int k = 0; k < jobs; k++) {
                    between[i][k] = i == k ? 0 : random.nextInt(300);
                }
            }
            List<Before> pairs = new ArrayList<>();
            for (int i = 0; i + 1 < jobs; i++) {
                if (random.nextInt(3) == 0) {
                    pairs.add(new Before(i, i + 1));
                }
            }
            orders.clear();
            fill(new int[jobs], 0, new boolean[jobs], pairs);
            double best = Double.POSITIVE_INFINITY;
            for (int[] order : orders) {
                double sum = first[order[0]];
                for (int i = 1; i < jobs; i++) {
                    sum += between[order[i - 1]][order[i]];
                }
                best = Math.min(best, sum);
            }
            double bound = new ChangeBound(between, first, new Precedence(jobs, pairs), best).seconds();
            assertTrue(bound <= best + 1e-9, "round " + round + ": " + bound + " above " + best);
            tight += bound > best * 0.999 - 1e-6 ? 1 : 0;
        }
        assertTrue(tight > 100, tight + " of 200 tight");
    }

    @Test
    void restsOfAFixedOrderAreThoseOfItsOwnSimulation() {
        SplittableRandom random = new SplittableRandom(78);
        for (int round = 0; round < 60; round++) {
            TestPlant plant = TestPlant.bench(random, false);
            ScheduleTask task = RandomTask.of(random, plant, 8).withPrecedence(List.of());
            task = task.withFixedOrder(Optional.of(List.of(7, 6, 5, 4, 3, 2, 1, 0)));
            double expected = seconds(plant, task, new int[] {7, 6, 5, 4, 3, 2, 1, 0});
            ScheduleAnswer answer = Scheduler.run(task, SearchEffort.USUAL, () -> false, done -> {});
            if (answer instanceof Schedule schedule) {
                assertEquals(expected, schedule.totalSeconds(), 1e-3 * expected, "round " + round);
                assertEquals(Schedule.Ending.FIXED_ORDER, schedule.ending());
            } else {
                assertTrue(Double.isInfinite(expected), "round " + round);
            }
        }
    }
}
