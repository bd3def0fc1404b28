// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;

/** Precautions that a plan brings itself. */
class PlanPrecautionsTest {
    private static final Problem OFF =
            new Problem(Severity.WARNING, "$.bench", "The bench is off by 2 %.", "Have it calibrated.");

    @TempDir
    private Path folder;

    private record Saying(Problem problem) implements Precaution {
        @Override
        public String id() {
            return "org.example.saying";
        }

        @Override
        public List<Problem> check(Project project, Step step) {
            return List.of(problem);
        }

        @Override
        public List<StopLimit> stopLimits(Project project, Step step) {
            return List.of(new StopLimit(StopLimit.Quantity.SUPPLY_AMPS, 30, "Beyond that it burns."));
        }
    }

    private record Failing() implements Precaution {
        @Override
        public String id() {
            return "org.example.failing";
        }

        @Override
        public List<Problem> check(Project project, Step step) {
            throw new IllegalStateException("the disk is gone");
        }

        @Override
        public List<StopLimit> stopLimits(Project project, Step step) {
            return List.of();
        }
    }

    private static PlanRun plan(Stage stage, Precaution precaution) throws Exception {
        PlanSetup setup = stage.setup.withPrecautions(List.of(precaution));
        assertEquals(List.of(precaution), setup.withItems(setup.items()).precautions());
        return new PlanRun(setup, stage.catalog, stage.runner, stage.log, Rests.NONE);
    }

    @Test
    void aWarningOfThePlansOwnPrecautionNeedsAYesAndItsBoundsHold() throws Exception {
        try (Stage stage = new Stage(folder, FakeMeasurement.good(Stage.BAD))) {
            PlanRun plan = plan(stage, new Saying(OFF));
            DryStep dry = plan.dryRun().steps().get(0);
            assertEquals(List.of(OFF), dry.unconfirmed());
            assertEquals(30, dry.stopLimits().get(0).highest());
            RunOutcome refused = plan.run(stage.first);
            assertInstanceOf(RunOutcome.Refused.class, refused);
            assertTrue(refused.sentence().contains("off by 2 %"), refused.sentence());
            plan.confirm("s1", OFF, "N. N.", "only a trial");
            assertInstanceOf(RunOutcome.Finished.class, plan.run(stage.first));
            assertInstanceOf(RunOutcome.Refused.class, plan.run(stage.second), "the yes was for the other step");
        }
    }

    @Test
    void aNoteIsShownAndHoldsNothingUp() throws Exception {
        try (Stage stage = new Stage(folder, FakeMeasurement.good(Stage.BAD))) {
            Problem note = new Problem(Severity.NOTE, "$.bench", "A new value is due today.", "Measure it.");
            PlanRun plan = plan(stage, new Saying(note));
            assertEquals(List.of(note), plan.dryRun().steps().get(0).problems());
            assertInstanceOf(RunOutcome.Finished.class, plan.run(stage.first));
        }
    }

    @Test
    void onePrecautionThatGivesNoAnswerForbidsTheStepAndHarmsNoPlugin() throws Exception {
        try (Stage stage = new Stage(folder, FakeMeasurement.good(Stage.BAD))) {
            PlanRun plan = plan(stage, new Failing());
            for (int i = 0; i <= Catalog.FAULTS_UNTIL_SET_ASIDE; i++) {
                DryStep dry = plan.dryRun().steps().get(0);
                assertFalse(dry.mayRun());
                assertTrue(dry.blocked().contains("the disk is gone"), dry.blocked());
            }
            assertTrue(stage.catalog.view().problems().isEmpty());
        }
    }
}
