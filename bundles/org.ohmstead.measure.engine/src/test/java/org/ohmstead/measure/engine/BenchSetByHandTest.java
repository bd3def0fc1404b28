// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Feed;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;

/** A bench of which a person sets some or all. */
@Timeout(60)
class BenchSetByHandTest {
    @TempDir
    Path folder;

    private Stage stage() throws Exception {
        return new Stage(folder, FakeMeasurement.good(Stage.BAD));
    }

    private static void takesMillis(long millis) {
        long end = System.nanoTime() + Duration.ofMillis(millis).toNanos();
        while (System.nanoTime() - end < 0) {
            LockSupport.parkNanos(1_000_000);
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"SELECT_LOAD", "SET_SUPPLY_VOLTS"})
    void aBenchThatCannotSetAllItselfIsOpenedAnewForEveryOtherStep(Ability lacks) throws Exception {
        try (Stage stage = stage()) {
            stage.driver.abilities = EnumSet.complementOf(EnumSet.of(lacks));
            stage.plan.run(stage.first);
            stage.plan.run(stage.first);
            assertEquals(1, stage.driver.opened.get(), "the same step, and it was not made safe");
            stage.plan.run(stage.second);
            assertEquals(2, stage.driver.opened.get());
            assertEquals(1, stage.driver.closed.get());
        }
    }

    @Test
    void aBenchThatSetsAllItselfStaysOpenEvenAfterItWasMadeSafe() throws Exception {
        try (Stage stage = stage()) {
            stage.plan.run(stage.first);
            stage.plan.emergencyStop("N. N.");
            stage.plan.release("N. N.");
            stage.driver.supplyVolts = 0;
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.second));
            assertEquals(14.4, stage.driver.supplyVolts, "setting them lets it feed again");
            assertEquals(1, stage.driver.opened.get());
        }
    }

    @Test
    void aBenchWithoutASupplyIsOpenedAnewAfterItWasMadeSafe() throws Exception {
        try (Stage stage = stage()) {
            stage.driver.abilities = EnumSet.of(Ability.TONE, Ability.WAVEFORM);
            stage.plan.run(stage.first);
            stage.plan.emergencyStop("N. N.");
            stage.plan.release("N. N.");
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            assertEquals(2, stage.driver.opened.get());
        }
    }

    @Test
    void aPersonMayTakeTheirTimeAndItIsNotTheMeasurements() throws Exception {
        FakeMeasurement quick = new FakeMeasurement(Stage.BAD, Duration.ofMillis(600), FakeMeasurement::peak);
        try (Stage stage = new Stage(folder, quick)) {
            stage.driver.asksPerson = true;
            stage.catalog.unbindDriver(stage.driver);
            stage.catalog.bindDriver(stage.driver);
            stage.driver.trick = call -> {
                if (call.equals("feed") || call.equals("acquire")) {
                    takesMillis(700);
                }
            };
            RunOutcome outcome = stage.plan.run(stage.first);
            assertInstanceOf(RunOutcome.Finished.class, outcome, outcome.sentence());
        }
    }

    @Test
    void aMeasurementThatHangsIsEndedThoughAPersonWasAsked() throws Exception {
        FakeMeasurement slow = new FakeMeasurement(Stage.BAD, Duration.ofMillis(600), (bench, progress) -> {
            bench.feed(Feed.Tone.of(1000, -3));
            while (true) {
                LockSupport.parkNanos(1_000_000);
                progress.checkpoint();
            }
        });
        try (Stage stage = new Stage(folder, slow)) {
            stage.driver.asksPerson = true;
            stage.catalog.unbindDriver(stage.driver);
            stage.catalog.bindDriver(stage.driver);
            stage.catalog.bindPrecaution(new Current());
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.MEASUREMENT, true);
            assertTrue(failed.sentence().contains("took longer than"), failed.sentence());
            assertEquals(
                    0, stage.driver.observed.get(), "a person is asked for the meters only when somebody wants it");
        }
    }

    private static final class Current implements Precaution {
        @Override
        public String id() {
            return "org.example.current";
        }

        @Override
        public List<Problem> check(Project project, Step step) {
            return List.of();
        }

        @Override
        public List<StopLimit> stopLimits(Project project, Step step) {
            return List.of(new StopLimit(StopLimit.Quantity.SUPPLY_AMPS, 30, "The fuse would blow."));
        }
    }
}
