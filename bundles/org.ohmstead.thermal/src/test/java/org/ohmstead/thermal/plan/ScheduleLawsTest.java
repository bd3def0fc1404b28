// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** How schedules must change when the task does. */
class ScheduleLawsTest {
    private static final SearchEffort LITTLE = new SearchEffort(5, 200, Duration.ofMinutes(5));

    @Property(seed = "20261141", tries = 60)
    void noLimitIsEverExceeded(@ForAll @IntRange(min = 1) int seed, @ForAll @IntRange(min = 1, max = 6) int jobs) {
        SplittableRandom random = new SplittableRandom(seed);
        TestPlant plant = TestPlant.bench(random, seed % 3 == 0);
        ScheduleTask task = RandomTask.of(random, plant, jobs);
        if (Scheduler.run(task, LITTLE, () -> false, done -> {}) instanceof Schedule schedule) {
            assertTrue(plant.worstExcess(task, schedule) <= 1e-5);
            assertTrue(schedule.lowerBoundSeconds() <= schedule.totalSeconds() + 1e-9);
        }
    }

    @Property(seed = "20261142", tries = 60)
    void coolerAirOrASmallerMarginTakeNoLonger(
            @ForAll @IntRange(min = 1) int seed,
            @ForAll @IntRange(min = 1, max = 5) int jobs,
            @ForAll @DoubleRange(max = 15) double cooler) {
        SplittableRandom random = new SplittableRandom(seed);
        TestPlant plant = TestPlant.bench(random, false);
        ScheduleTask task = RandomTask.of(random, plant, jobs);
        OptionalDouble warm = shortest(task);
        OptionalDouble cool = shortest(changed(task, cooler, 0));
        OptionalDouble daring = shortest(changed(task, 0, Math.min(cooler, task.marginKelvin())));
        if (warm.isPresent()) {
            assertTrue(cool.orElseThrow() <= warm.getAsDouble() + 1e-6, cool + " and " + warm);
            assertTrue(daring.orElseThrow() <= warm.getAsDouble() + 1e-6, daring + " and " + warm);
        }
    }

    @Property(seed = "20261143", tries = 60)
    void theOrderInWhichJobsAreListedDoesNotMatter(
            @ForAll @IntRange(min = 1) int seed,
            @ForAll @IntRange(min = 2, max = 5) int count,
            @ForAll Random shuffle) {
        SplittableRandom random = new SplittableRandom(seed);
        TestPlant plant = TestPlant.bench(random, false);
        ScheduleTask task = RandomTask.of(random, plant, count).withPrecedence(List.of());
        List<HeatJob> jobs = new ArrayList<>(task.jobs());
        Collections.shuffle(jobs, shuffle);
        ScheduleTask plain = task.withChanges(ChangeOvers.none(count));
        ScheduleTask shuffled = new ScheduleTask(
                plain.model(),
                plain.ambientCelsius(),
                plain.marginKelvin(),
                jobs,
                plain.idleWatts(),
                plain.idleSupplyWatts(),
                plain.changes(),
                List.of(),
                plain.startState(),
                plain.fixedOrder());
        OptionalDouble one = shortest(plain);
        OptionalDouble other = shortest(shuffled);
        assertEquals(one.isPresent(), other.isPresent());
        if (one.isPresent()) {
            assertEquals(one.getAsDouble(), other.getAsDouble(), 1e-6);
        }
    }

    /** Returns the total time; with so few jobs every order is accounted for. */
    private static OptionalDouble shortest(ScheduleTask task) {
        if (Scheduler.run(task, LITTLE, () -> false, done -> {}) instanceof Schedule schedule) {
            assertTrue(schedule.provenShortest(), schedule.message());
            return OptionalDouble.of(schedule.totalSeconds());
        }
        return OptionalDouble.empty();
    }

    private static ScheduleTask changed(ScheduleTask task, double coolerKelvin, double daringKelvin) {
        return new ScheduleTask(
                task.model(),
                task.ambientCelsius() - coolerKelvin,
                task.marginKelvin() - daringKelvin,
                task.jobs(),
                task.idleWatts(),
                task.idleSupplyWatts(),
                task.changes(),
                task.precedence(),
                task.startState(),
                task.fixedOrder());
    }
}
