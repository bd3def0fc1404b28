// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLogException;

@Timeout(60)
class DriverFaultsTest {
    @TempDir
    Path folder;

    private Stage stage() throws Exception {
        return new Stage(folder, FakeMeasurement.good(Stage.BAD));
    }

    @ParameterizedTest
    @ValueSource(strings = {"open", "connect", "setSupplyVolts", "silence", "feed", "acquire"})
    void aDriverThatThrowsEndsTheRunByItsName(String where) throws Exception {
        try (Stage stage = stage()) {
            stage.driver.trick = call -> {
                if (call.equals(where)) {
                    throw new IllegalStateException("broken at " + where);
                }
            };
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.DRIVER, true);
            assertTrue(failed.sentence().contains("broken at " + where), failed.sentence());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"open", "connect", "acquire"})
    void anErrorOfADriverIsContained(String where) throws Exception {
        try (Stage stage = stage()) {
            stage.driver.trick = call -> {
                if (call.equals(where)) {
                    throw new NoClassDefFoundError("org/example/Gone");
                }
            };
            stage.failsAndGoesOn(PluginKind.DRIVER, true);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"open", "connect", "feed", "acquire"})
    void aDriverThatHangsIsGivenUp(String where) throws Exception {
        CountDownLatch release = new CountDownLatch(1);
        try (Stage stage = stage()) {
            stage.driver.trick = call -> {
                while (call.equals(where) && release.getCount() > 0) {
                    LockSupport.parkNanos(1_000_000);
                    Thread.interrupted();
                }
            };
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.DRIVER, true);
            assertTrue(failed.sentence().contains("did not answer"), failed.sentence());
        } finally {
            release.countDown();
        }
    }

    @Test
    void aBenchThatOpensTooLateIsClosedAtOnce() throws Exception {
        CountDownLatch release = new CountDownLatch(1);
        try (Stage stage = stage()) {
            stage.driver.trick = call -> {
                while (call.equals("open") && release.getCount() > 0) {
                    LockSupport.parkNanos(1_000_000);
                    Thread.interrupted();
                }
            };
            assertInstanceOf(RunOutcome.Failed.class, stage.plan.run(stage.first));
            stage.driver.trick = call -> {};
            release.countDown();
            Stage.await(() -> stage.driver.opened.get() == 1 && stage.driver.closed.get() == 1);
            stage.goesOn();
        }
    }

    @Test
    void anOrderlyFailureOfABenchIsTheBenchsAndNoFault() throws Exception {
        try (Stage stage = stage()) {
            stage.driver.trick = call -> {
                if (call.equals("acquire")) {
                    throw new MeasurementException("The recorder does not answer. Switch it on.");
                }
            };
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.DRIVER, false);
            assertTrue(failed.sentence().contains("The recorder does not answer. Switch it on."), failed.sentence());
        }
    }

    @Test
    void aBenchThatGivesNothingIsRefused() throws Exception {
        try (Stage stage = stage()) {
            stage.driver.nothing = true;
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.DRIVER, true);
            assertTrue(failed.sentence().contains("it gave no recording"), failed.sentence());
        }
    }

    @Test
    void aBenchThatCannotBeMadeSafeIsSaidSo() throws Exception {
        try (Stage stage = stage()) {
            stage.driver.trick = call -> {
                if (call.equals("acquire") || call.equals("standDown") || call.equals("close")) {
                    throw new IllegalStateException("stuck");
                }
            };
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.DRIVER, true);
            assertTrue(failed.remarks().toString().contains("Switch the supply off by hand"), failed.toString());
            assertTrue(stage.log
                    .entries(LogQuery.everything())
                    .get(0)
                    .bodyText()
                    .contains("Switch the supply off by hand"));
        }
    }

    @Test
    void aDriverThatGoesAwayMidRunEndsThatRun() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            bench.feed(Feed.Tone.of(1000, -3));
            begun.countDown();
            while (true) {
                bench.acquire(0.01);
                progress.checkpoint();
            }
        }))) {
            Thread remover = new Thread(() -> {
                Stage.await(() -> begun.getCount() == 0);
                stage.catalog.unbindDriver(stage.driver);
            });
            remover.start();
            RunOutcome.Failed failed = assertInstanceOf(RunOutcome.Failed.class, stage.plan.run(stage.first));
            remover.join();
            assertEquals(FakeDriver.ID, failed.pluginId());
            assertFalse(stage.driver.fed);
            assertEquals(1, stage.driver.closed.get());
            assertInstanceOf(RunOutcome.Refused.class, stage.plan.run(stage.second), "there is no bench");
            stage.catalog.bindDriver(stage.driver);
            stage.goesOn();
        }
    }

    @Test
    void aBenchThatLacksAnAbilityIsRefusedBeforeAnythingIsFed() throws Exception {
        try (Stage stage = stage()) {
            stage.driver.abilities = EnumSet.of(Ability.TONE);
            RunOutcome refused = stage.plan.run(stage.first);
            assertInstanceOf(RunOutcome.Refused.class, refused);
            assertTrue(refused.sentence().contains("cannot record the output"), refused.sentence());
            stage.driver.abilities = EnumSet.allOf(Ability.class);
            stage.goesOn();
        }
    }

    @Test
    void aBenchThatDoesNotConnectOrSetIsTakenAsItStandsAndTheLogSaysSo() throws Exception {
        try (Stage stage = stage()) {
            stage.driver.abilities = EnumSet.of(Ability.TONE, Ability.WAVEFORM);
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            List<String> notes = stage.log
                    .entries(LogQuery.validFigures())
                    .get(0)
                    .figures()
                    .orElseThrow()
                    .notes();
            assertTrue(notes.toString().contains("does not connect loads"), notes.toString());
            assertEquals(0, stage.driver.supplyVolts);
        }
    }

    @Test
    void oneBenchServesOneRunAtATime() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, (bench, progress) -> {
                    begun.countDown();
                    goOn.await();
                    return FakeMeasurement.peak(bench, progress);
                }));
                Runner other = new Runner(stage.catalog, stage.runner.bench(), Stage.LIMITS)) {
            Thread runs = new Thread(() -> {
                try {
                    stage.plan.run(stage.first);
                } catch (TestLogException failed) {
                    throw new AssertionError(failed);
                }
            });
            runs.start();
            Stage.await(() -> begun.getCount() == 0);
            RunRequest request =
                    new RunRequest(stage.setup.subject(stage.second), Stage.GOOD, Map.of(), List.of(), folder);
            assertInstanceOf(RunOutcome.Refused.class, stage.runner.run(request, view -> {}));
            RunOutcome refused = other.run(request, view -> {});
            assertInstanceOf(RunOutcome.Refused.class, refused);
            assertTrue(refused.sentence().contains("is in use"), refused.sentence());
            goOn.countDown();
            runs.join();
            stage.runner.close();
            assertInstanceOf(RunOutcome.Finished.class, other.run(request, view -> {}));
        }
    }
}
