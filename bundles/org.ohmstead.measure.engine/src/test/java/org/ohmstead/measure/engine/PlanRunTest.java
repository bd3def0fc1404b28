// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

@Timeout(60)
class PlanRunTest {
    @TempDir
    Path folder;

    private Stage stage() throws TestLogException {
        return new Stage(folder, FakeMeasurement.good(Stage.BAD));
    }

    private static List<ItemState.Status> statuses(Stage stage) {
        return stage.plan.state().items().stream().map(ItemState::status).toList();
    }

    private record Careful(String id, Function<Subject, List<Problem>> says) implements Precaution {
        @Override
        public List<Problem> check(Project project, Step step) {
            return says.apply(new Subject(project, step));
        }

        @Override
        public List<StopLimit> stopLimits(Project project, Step step) {
            return List.of(new StopLimit(StopLimit.Quantity.SUPPLY_AMPS, 30, "The fuse would blow."));
        }
    }

    private static Problem problem(Severity severity) {
        return new Problem(severity, "$.plan[0]", "The load gets hot.", "Cool it.");
    }

    @Test
    void aPlanIsCarriedOutAndLoggedWithAllThatItDependedOn() throws Exception {
        try (Stage stage = stage()) {
            List<String> heard = new ArrayList<>();
            stage.plan.addListener(new RunListener() {
                @Override
                public void logged(LogEntry entry) {
                    heard.add(entry.id());
                    throw new IllegalStateException("a listener that throws");
                }

                @Override
                public void ended(PlanItem item, RunOutcome outcome) {
                    heard.add(item.stepId() + " " + outcome.getClass().getSimpleName());
                }
            });
            assertTrue(stage.plan.runAll().complete());
            assertEquals(List.of("F0001", "s1 Finished", "F0002", "s2 Finished"), heard);
            MeasuredFigures figures =
                    stage.log.entry("F0001").orElseThrow().figures().orElseThrow();
            assertEquals("s1", figures.stepId());
            assertEquals(Stage.BAD, figures.measurementId());
            assertEquals("1.2.3", figures.measurementVersion());
            assertEquals(FakeProject.REVISION, figures.provenance().projectRevision());
            assertEquals("N. N.", figures.provenance().operator());
            assertEquals(
                    Optional.of(new Specimen("Made-up Workshop M-1", "0001", "Bench 1")),
                    figures.provenance().specimen());
            assertEquals(BenchKind.SIMULATED, figures.driver().kind());
            assertEquals(22, figures.conditions().ambientCelsius().orElseThrow());
            assertEquals("V", figures.figures().get(0).unit());
            // The bench's sine has 4 V peak, and a sample stands on its crest.
            assertEquals(4, figures.figures().get(0).value(), 1e-9);
            assertTrue(figures.notes().toString().contains("the bench was simulated"));
            String hash = figures.provenance().captures().get(0).sha256();
            Path file = folder.resolve("captures").resolve(hash.substring(0, 2)).resolve(hash + ".wav");
            assertEquals(hash, CaptureStore.sha256(file));
            assertEquals(14.4, stage.driver.supplyVolts);
            assertEquals(1, stage.driver.opened.get(), "the bench stays open from step to step");
            stage.runner.close();
            assertEquals(1, stage.driver.closed.get());
        }
    }

    @Test
    void afterReopeningItGoesOnBehindWhatIsLogged() throws Exception {
        try (Stage stage = stage()) {
            stage.plan.run(stage.first);
            stage.reopen();
            assertEquals(List.of(ItemState.Status.DONE, ItemState.Status.PENDING), statuses(stage));
            assertEquals(List.of("F0001"), stage.plan.state().items().get(0).entryIds());
            assertEquals(1, stage.plan.dryRun().steps().size());
            assertTrue(stage.plan.runAll().complete());
            assertEquals(2, stage.log.entries(LogQuery.validFigures()).size());
            PlanSetup changed =
                    new PlanSetup(stage.project, "ef".repeat(32), folder, stage.setup.items(), "N. N.", "0.1.0");
            PlanRun other = new PlanRun(changed, stage.catalog, stage.runner, stage.log, Rests.NONE);
            assertEquals(
                    ItemState.Status.PENDING, other.state().items().get(0).status(), "another state of the project");
        }
    }

    @Test
    void voidedIsToBeDoneAgainAndRepeatedStandsBeside() throws Exception {
        try (Stage stage = stage()) {
            stage.plan.runAll();
            stage.plan.run(stage.first);
            assertEquals(
                    List.of("F0001", "F0003"), stage.plan.state().items().get(0).entryIds());
            stage.plan.voidEntry("F0001", "a lead was loose", "N. N.");
            assertEquals(List.of("F0003"), stage.plan.state().items().get(0).entryIds());
            stage.plan.voidEntry("F0003", "again", "N. N.");
            assertEquals(List.of(ItemState.Status.PENDING, ItemState.Status.DONE), statuses(stage));
            stage.plan.runAll();
            assertEquals(List.of("F0004"), stage.plan.state().items().get(0).entryIds());
            assertTrue(stage.log.verify().intact());
        }
    }

    @Test
    void skippedStaysSkippedAfterReopening() throws Exception {
        try (Stage stage = stage()) {
            stage.plan.skip(stage.first, "no load at hand", "N. N.");
            stage.reopen();
            ItemState skipped = stage.plan.state().items().get(0);
            assertEquals(ItemState.Status.SKIPPED, skipped.status());
            assertEquals("no load at hand", skipped.sentence());
            assertTrue(stage.plan.runAll().complete());
            stage.plan.run(stage.first);
            assertEquals(
                    ItemState.Status.DONE, stage.plan.state().items().get(0).status());
            stage.plan.voidEntry("F0002", "wrong", "");
            stage.plan.voidEntry("N0001", "we have a load now", "");
            assertEquals(
                    ItemState.Status.PENDING, stage.plan.state().items().get(0).status());
        }
    }

    @Test
    void aWarningNeedsAYesWithNameAndReasonAndTheLogKeepsIt() throws Exception {
        try (Stage stage = stage()) {
            stage.catalog.bindPrecaution(new Careful(
                    "org.example.heat", subject -> List.of(problem(Severity.WARNING), problem(Severity.NOTE))));
            DryStep step = stage.plan.dryRun().steps().get(0);
            assertFalse(step.mayRun());
            assertEquals(2, step.problems().size());
            assertEquals("The fuse would blow.", step.stopLimits().get(0).reason());
            assertEquals(0, stage.driver.opened.get(), "a dry run opens no bench");
            RunOutcome refused = stage.plan.run(stage.first);
            assertInstanceOf(RunOutcome.Refused.class, refused);
            assertTrue(refused.sentence().contains("The load gets hot. Cool it."), refused.sentence());
            Problem warning = step.unconfirmed().get(0);
            assertThrows(IllegalArgumentException.class, () -> stage.plan.confirm("s1", warning, "", "why not"));
            stage.plan.confirm("s1", warning, "N. N.", "It is water-cooled.");
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            assertInstanceOf(RunOutcome.Refused.class, stage.plan.run(stage.second), "a yes is for one step");
            String note = stage.log.entry("N0001").orElseThrow().bodyText();
            assertTrue(note.contains("The load gets hot.") && note.contains("It is water-cooled."), note);
        }
    }

    @Test
    void anErrorForbidsAndSoDoesAPrecautionThatGivesNoAnswer() throws Exception {
        try (Stage stage = stage()) {
            Careful strict = new Careful("org.example.strict", subject -> List.of(problem(Severity.ERROR)));
            stage.catalog.bindPrecaution(strict);
            assertInstanceOf(RunOutcome.Refused.class, stage.plan.run(stage.first));
            stage.catalog.unbindPrecaution(strict);
            for (Function<Subject, List<Problem>> answer : List.<Function<Subject, List<Problem>>>of(
                    subject -> null,
                    subject -> {
                        throw new NoClassDefFoundError("org/example/Gone");
                    },
                    subject -> {
                        while (!Thread.currentThread().isInterrupted()) {
                            Thread.onSpinWait();
                        }
                        return List.of();
                    })) {
                Careful broken = new Careful("org.example.broken" + answer.hashCode(), answer);
                stage.catalog.bindPrecaution(broken);
                RunOutcome refused = stage.plan.run(stage.first);
                assertInstanceOf(RunOutcome.Refused.class, refused);
                assertTrue(refused.sentence().contains("nobody knows whether this step is safe"), refused.sentence());
                stage.catalog.unbindPrecaution(broken);
            }
            assertEquals(0, stage.driver.opened.get());
            stage.goesOn();
        }
    }

    @Test
    void cancellingEndsTheItemAndBeginsNoOther() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            begun.countDown();
            while (true) {
                bench.acquire(0.01);
                progress.checkpoint();
            }
        }))) {
            Thread other = new Thread(() -> {
                Stage.await(() -> begun.getCount() == 0);
                stage.plan.cancel("N. N.");
            });
            other.start();
            PlanState state = stage.plan.runAll();
            other.join();
            assertEquals("The run was cancelled (N. N.).", state.items().get(0).sentence());
            assertEquals(ItemState.Status.PENDING, state.items().get(1).status());
            stage.goesOn();
        }
    }

    @Test
    void anInterruptOfTheCallerCancels() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            begun.countDown();
            new CountDownLatch(1).await();
            return null;
        }))) {
            Thread me = Thread.currentThread();
            Thread other = new Thread(() -> {
                Stage.await(() -> begun.getCount() == 0);
                me.interrupt();
            });
            other.start();
            assertInstanceOf(RunOutcome.Cancelled.class, stage.plan.run(stage.first));
            assertTrue(Thread.interrupted(), "the caller still knows that he was interrupted");
            other.join();
            stage.goesOn();
        }
    }

    @Test
    void whatCannotBeLoggedIsSaidAndNothingFurtherIsBegun() throws Exception {
        Files.writeString(folder.resolve("captures"), "a file where the recordings should go");
        try (Stage stage = stage()) {
            PlanState state = stage.plan.runAll();
            assertEquals(ItemState.Status.FAILED, state.items().get(0).status());
            assertTrue(state.items().get(0).sentence().contains("could not be copied"), state.toString());
            assertEquals(ItemState.Status.PENDING, state.items().get(1).status());
            Files.delete(folder.resolve("captures"));
            stage.goesOn();
            stage.log.close();
            assertThrows(TestLogException.class, () -> stage.plan.run(stage.first));
            assertEquals(
                    ItemState.Status.FAILED, stage.plan.state().items().get(0).status());
            assertFalse(stage.driver.fed);
            try (TestLog again = TestLog.open(stage.log.file())) {
                assertTrue(again.verify().intact());
            }
        }
    }

    @Test
    void aSetupRefusesUnknownStepsAndTheSameTwice() throws Exception {
        try (Stage stage = stage()) {
            assertThrows(
                    IllegalArgumentException.class, () -> stage.setup.withItems(List.of(stage.first, stage.first)));
            assertThrows(
                    IllegalArgumentException.class,
                    () -> stage.setup.withItems(List.of(new PlanItem("s9", Stage.GOOD, Map.of()))));
        }
    }
}
