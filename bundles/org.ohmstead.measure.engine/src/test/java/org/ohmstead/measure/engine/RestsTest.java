// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLogException;

@Timeout(60)
class RestsTest {
    private static final Rests AN_HOUR = (item, state) -> Duration.ofHours(1);

    @TempDir
    Path folder;

    private Stage stage(DriverInfo.Kind kind) throws Exception {
        return new Stage(folder, FakeMeasurement.good(Stage.BAD), kind);
    }

    /** Does something as soon as it hears of a rest, on another thread, and remembers what it heard. */
    private static final class AtRest implements RunListener {
        private final List<Duration> heard = Collections.synchronizedList(new ArrayList<>());
        private final Runnable then;

        AtRest(Runnable then) {
            this.then = then;
        }

        @Override
        public void resting(PlanItem item, Duration left) {
            heard.add(left);
            if (heard.size() == 1) {
                new Thread(then).start();
            }
        }
    }

    private static AtRest listening(PlanRun plan, Consumer<PlanRun> then) {
        AtRest listener = new AtRest(() -> then.accept(plan));
        plan.addListener(listener);
        return listener;
    }

    @Test
    void aRestIsWaitedForAndNothingIsFedMeanwhile() throws Exception {
        try (Stage stage = stage(DriverInfo.Kind.REAL)) {
            Duration rest = Duration.ofMillis(1100);
            PlanRun plan = stage.planWith((item, state) -> item.equals(stage.second) ? rest : Duration.ofSeconds(-1));
            List<Boolean> fed = new ArrayList<>();
            List<Duration> heard = new ArrayList<>();
            plan.addListener(new RunListener() {
                @Override
                public void resting(PlanItem item, Duration left) {
                    assertEquals(stage.second, item);
                    fed.add(stage.driver.fed);
                    heard.add(left);
                }
            });
            long begun = System.nanoTime();
            assertTrue(plan.runAll().complete());
            assertTrue(System.nanoTime() - begun >= rest.toNanos());
            assertEquals(List.of(false, false, false), fed, "at its beginning, after a second, at its end");
            assertEquals(rest, heard.get(0));
            assertTrue(heard.get(1).compareTo(Duration.ofMillis(101)) < 0, heard.toString());
            assertEquals(Duration.ZERO, heard.get(2));
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"SIMULATED", "REPLAYED"})
    void nobodyWaitsForAnAmplifierThatGetsNotWarm(DriverInfo.Kind kind) throws Exception {
        try (Stage stage = stage(kind)) {
            assertTrue(stage.planWith(AN_HOUR).runAll().complete());
        }
    }

    @Test
    void aRestCanBeEndedAndTheItemBeginsAtOnce() throws Exception {
        try (Stage stage = stage(DriverInfo.Kind.REAL)) {
            PlanRun plan = stage.planWith(AN_HOUR);
            plan.endRest();
            AtRest listener = listening(plan, PlanRun::endRest);
            assertInstanceOf(RunOutcome.Finished.class, plan.run(stage.first));
            assertEquals(List.of(Duration.ofHours(1), Duration.ZERO), listener.heard);
        }
    }

    @Test
    void cancellingEndsARestAtOnceAndTheItemIsNotBegun() throws Exception {
        try (Stage stage = stage(DriverInfo.Kind.REAL)) {
            PlanRun plan = stage.planWith(AN_HOUR);
            listening(plan, each -> each.cancel("N. N."));
            PlanState state = plan.runAll(true);
            assertEquals(0, stage.driver.opened.get());
            assertEquals(
                    "The run was cancelled before it began.",
                    state.items().get(0).sentence());
            assertEquals(ItemState.Status.PENDING, state.items().get(1).status(), "and begins no other");
            plan.addListener(new AtRest(plan::endRest));
            assertInstanceOf(RunOutcome.Finished.class, plan.run(stage.second));
        }
    }

    @Test
    void theEmergencyStopEndsARestAtOnceAndIsLoggedOnce() throws Exception {
        try (Stage stage = stage(DriverInfo.Kind.REAL)) {
            PlanRun plan = stage.planWith(AN_HOUR);
            listening(plan, each -> assertEquals(List.of(), each.emergencyStop("N. N.")));
            PlanState state = plan.runAll(true);
            assertTrue(state.halted());
            assertEquals(0, stage.driver.opened.get());
            assertTrue(state.items().get(0).sentence().contains("Release the emergency stop first."), state.toString());
            Stage.await(() -> notes(stage).contains("between two steps"));
            assertEquals(1, stage.log.entries(LogQuery.everything()).size(), notes(stage));
        }
    }

    private static String notes(Stage stage) {
        try {
            return stage.log.entries(LogQuery.everything()).toString();
        } catch (TestLogException unreadable) {
            throw new IllegalStateException(unreadable);
        }
    }

    @Test
    void anInterruptOfTheCallerEndsARest() throws Exception {
        try (Stage stage = stage(DriverInfo.Kind.REAL)) {
            Thread me = Thread.currentThread();
            PlanRun plan = stage.planWith(AN_HOUR);
            listening(plan, each -> me.interrupt());
            assertInstanceOf(RunOutcome.Cancelled.class, plan.run(stage.first));
            assertTrue(Thread.interrupted(), "the caller still knows that he was interrupted");
        }
    }

    @Test
    void nobodyRestsBeforeAnItemThatMayNotRun() throws Exception {
        try (Stage stage = stage(DriverInfo.Kind.REAL)) {
            stage.catalog.bindPrecaution(new Forbidding());
            AtRest listener = listening(stage.planWith(AN_HOUR), each -> {});
            assertInstanceOf(RunOutcome.Refused.class, stage.planWith(AN_HOUR).run(stage.first));
            assertEquals(List.of(), listener.heard);
        }
    }

    private static final class Forbidding implements Precaution {
        @Override
        public String id() {
            return "org.example.forbidding";
        }

        @Override
        public List<Problem> check(Project project, Step step) {
            return List.of(new Problem(Severity.ERROR, step.id(), "The load would burn.", "Take another."));
        }

        @Override
        public List<StopLimit> stopLimits(Project project, Step step) {
            return List.of();
        }
    }

    @Test
    void anItemThatFailsKeepsTheOthersFromBeingTriedOnlyIfWanted() throws Exception {
        FakeMeasurement failing = new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            throw new IllegalStateException("broken");
        });
        try (Stage stage = new Stage(folder, failing)) {
            PlanState stopped = stage.plan.runAll(false);
            assertEquals(ItemState.Status.PENDING, stopped.items().get(1).status());
            PlanState tried = stage.plan.runAll(true);
            assertEquals(ItemState.Status.FAILED, tried.items().get(0).status());
            assertEquals(ItemState.Status.DONE, tried.items().get(1).status());
            assertFalse(tried.complete());
            assertEquals(3, stage.log.entries(LogQuery.everything()).size(), "each try is logged: " + notes(stage));
        }
    }

    @Test
    void whatTheMetersAndTheRecorderShowedIsShownLive() throws Exception {
        FakeMeasurement measurement = new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            var result = FakeMeasurement.peak(bench, progress);
            bench.observe();
            return result;
        });
        try (Stage stage = new Stage(folder, measurement)) {
            List<ProgressView> views = new ArrayList<>();
            stage.plan.addListener(new RunListener() {
                @Override
                public void progress(PlanItem item, ProgressView progress) {
                    views.add(progress);
                }
            });
            stage.driver.supplyAmps = 7;
            stage.plan.run(stage.first);
            ProgressView last = views.get(views.size() - 1);
            assertEquals(7, last.meters().orElseThrow().supplyAmps().orElseThrow());
            assertEquals(
                    480, last.newest().orElseThrow().output().channels().get(0).size());
        }
    }
}
