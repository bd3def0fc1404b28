// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.measure.Feed;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;
import org.ohmstead.testlog.LogQuery;

@Timeout(60)
class SafetyTest {
    @TempDir
    Path folder;

    private record Bound(String id, StopLimit limit) implements Precaution {
        @Override
        public List<Problem> check(Project project, Step step) {
            return List.of();
        }

        @Override
        public List<StopLimit> stopLimits(Project project, Step step) {
            return List.of(limit);
        }
    }

    private static Bound bound(StopLimit.Quantity quantity, double highest) {
        return new Bound("org.example.bound", new StopLimit(quantity, highest, "Beyond that it burns."));
    }

    private static FakeMeasurement recording() {
        return new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            bench.feed(Feed.Tone.of(1000, -3));
            while (true) {
                bench.acquire(0.01);
                progress.checkpoint();
            }
        });
    }

    private RunOutcome.Stopped stops(Stage stage, Bound bound) throws Exception {
        stage.catalog.bindPrecaution(bound);
        RunOutcome.Stopped stopped = assertInstanceOf(RunOutcome.Stopped.class, stage.plan.run(stage.first));
        assertFalse(stage.driver.fed);
        assertTrue(stage.driver.stoodDown.get() > 0);
        assertTrue(stopped.sentence().contains("Beyond that it burns."), stopped.sentence());
        assertTrue(stage.log.entry("N0001").orElseThrow().bodyText().contains("Beyond that it burns."));
        stage.catalog.unbindPrecaution(bound);
        stage.driver.supplyAmps = 5;
        stage.goesOn();
        return stopped;
    }

    @Test
    void aRecordingThatShowsTooMuchCurrentStopsTheStep() throws Exception {
        try (Stage stage = new Stage(folder, recording())) {
            stage.driver.supplyAmps = 31;
            RunOutcome.Stopped stopped = stops(stage, bound(StopLimit.Quantity.SUPPLY_AMPS, 30));
            assertEquals(31, stopped.observed());
        }
    }

    @Test
    void tooMuchOutputPowerStopsTheStep() throws Exception {
        try (Stage stage = new Stage(folder, recording())) {
            RunOutcome.Stopped stopped = stops(stage, bound(StopLimit.Quantity.OUTPUT_WATTS, 1.9));
            // Closed form: a sine of 4 V peak over 4 ohm gives 4^2 / (2 * 4) = 2 W.
            assertEquals(2, stopped.observed(), 1e-9);
        }
    }

    @Test
    void theMetersAreWatchedWhileAMeasurementOnlyThinksAndFeeds() throws Exception {
        FakeMeasurement.Work work = (bench, progress) -> {
            bench.feed(Feed.Tone.of(1000, -3));
            while (true) {
                LockSupport.parkNanos(1_000_000);
                progress.checkpoint();
            }
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            stage.driver.trick = call -> {
                if (call.equals("observe") && stage.driver.observed.get() > 2) {
                    stage.driver.supplyAmps = 40;
                }
            };
            RunOutcome.Stopped stopped = stops(stage, bound(StopLimit.Quantity.SUPPLY_AMPS, 30));
            assertEquals(40, stopped.observed());
        }
    }

    @Test
    void theMetersAreLeftAloneWhenNothingIsFedOrBounded() throws Exception {
        FakeMeasurement.Work work = (bench, progress) -> {
            for (int i = 0; i < 300; i++) {
                LockSupport.parkNanos(1_000_000);
            }
            return FakeMeasurement.peak(bench, progress);
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            stage.catalog.bindPrecaution(bound(StopLimit.Quantity.SUPPLY_AMPS, 30));
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            assertEquals(0, stage.driver.observed.get());
        }
    }

    @Test
    void theEmergencyStopMakesTheBenchSafeFromAnyThreadThoughTheBenchIsBusy() throws Exception {
        CountDownLatch recordingNow = new CountDownLatch(1);
        CountDownLatch release = new CountDownLatch(1);
        AtomicReference<List<String>> wrong = new AtomicReference<>(List.of("not yet"));
        try (Stage stage = new Stage(folder, recording())) {
            stage.driver.trick = call -> {
                if (call.equals("acquire")) {
                    recordingNow.countDown();
                    release.await();
                }
            };
            Thread hand = new Thread(() -> {
                Stage.await(() -> recordingNow.getCount() == 0);
                wrong.set(stage.plan.emergencyStop("N. N."));
            });
            hand.start();
            PlanState state = stage.plan.runAll();
            hand.join();
            assertEquals(List.of(), wrong.get());
            assertFalse(stage.driver.fed);
            assertTrue(stage.driver.stoodDown.get() > 0);
            assertTrue(state.halted());
            assertTrue(
                    state.items().get(0).sentence().contains("emergency stop was pressed (N. N.)"), state.toString());
            RunOutcome refused = stage.plan.run(stage.second);
            assertInstanceOf(RunOutcome.Refused.class, refused);
            assertEquals(14.4, stage.driver.supplyVolts);
            stage.plan.release("N. N.");
            stage.goesOn();
            String notes = stage.log.entries(LogQuery.everything()).toString();
            assertTrue(notes.contains("pressed (N. N.)") && notes.contains("was released"), notes);
        }
    }

    @Test
    void theEmergencyStopBetweenStepsIsLoggedToo() throws Exception {
        try (Stage stage = new Stage(folder, FakeMeasurement.good(Stage.BAD))) {
            stage.plan.run(stage.first);
            assertEquals(List.of(), stage.plan.emergencyStop("N. N."));
            assertEquals(1, stage.driver.stoodDown.get());
            assertTrue(stage.log.entry("N0001").isPresent());
            assertFalse(stage.plan.runAll().complete());
        }
    }

    @Test
    void betweenStepsNothingIsFedThoughAMeasurementLeavesItOn() throws Exception {
        FakeMeasurement.Work work = (bench, progress) -> {
            var result = FakeMeasurement.peak(bench, progress);
            bench.feed(Feed.Tone.of(1000, -3));
            return result;
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            assertFalse(stage.driver.fed);
            assertEquals(0, stage.driver.stoodDown.get(), "silence was enough");
        }
    }

    @Test
    void aBenchThatDoesNotFallSilentIsMadeSafe() throws Exception {
        CountDownLatch done = new CountDownLatch(1);
        FakeMeasurement.Work work = (bench, progress) -> {
            var result = FakeMeasurement.peak(bench, progress);
            bench.feed(Feed.Tone.of(1000, -3));
            done.countDown();
            return result;
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            stage.driver.trick = call -> {
                if (call.equals("silence") && done.getCount() == 0) {
                    throw new IllegalStateException("stuck");
                }
            };
            RunOutcome outcome = stage.plan.run(stage.first);
            assertFalse(stage.driver.fed);
            assertTrue(stage.driver.stoodDown.get() > 0);
            assertEquals(1, stage.driver.closed.get(), outcome.toString());
        }
    }
}
