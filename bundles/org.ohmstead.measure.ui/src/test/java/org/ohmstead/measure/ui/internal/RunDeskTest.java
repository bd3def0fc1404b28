// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.measure.bench.SimulatedBenchDriver;
import org.ohmstead.measure.bench.TypedBenchDriver;
import org.ohmstead.measure.engine.RunOutcome;
import org.ohmstead.model.Problem;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.Unsaved;

/** The behaviour behind the console, on the simulated bench and without any widget. */
class RunDeskTest {
    /** As slow as a real bench, so that there is time to stop it. */
    private static final Map<String, String> SLOW = Map.of("realPace", "true");

    @TempDir
    Path folder;

    private ConsoleStage stage;

    @BeforeEach
    void open() throws Exception {
        stage = new ConsoleStage(folder);
        stage.open();
    }

    @AfterEach
    void close() {
        stage.close();
    }

    private RunDesk on(String driver, Map<String, String> settings) {
        RunDesk runs = stage.ready();
        runs.choose(choices -> choices.withDriver(driver, settings));
        stage.until(
                "the other bench is there",
                () -> runs.whyNot().isEmpty() && !runs.dryRuns().busy());
        return runs;
    }

    private void ended(RunDesk runs) {
        stage.until("it has ended", () -> !runs.running() && !runs.dryRuns().busy());
    }

    @Test
    void makesNoLogBeforeSomebodyWantsOne() {
        stage.runs();
        stage.settle();
        assertEquals(RunStage.NOT_BEGUN, stage.runs().stage());
        assertEquals(32, stage.runs().course().rows().size());
        assertEquals(ItemRow.Status.NEXT, stage.runs().course().rows().get(0).status());
        assertFalse(Files.exists(folder.resolve("log.db")));
    }

    @Test
    void measuresTheNextItemAndTheLogFollows() {
        RunDesk runs = stage.ready();
        runs.runNext();
        assertTrue(runs.running());
        ended(runs);
        assertTrue(
                runs.course().ended().isPresent(),
                () -> runs.message() + " " + runs.course().rows().get(0) + runs.stage());
        assertTrue(runs.course().ended().orElseThrow().outcome() instanceof RunOutcome.Finished);
        stage.until("the desk has read it", () -> !stage.entries().isEmpty());
        assertEquals(
                "stereo-8ohm-11V5",
                stage.entries().get(0).reading().orElseThrow().stepId());
        assertEquals(ItemRow.Status.DONE, runs.course().rows().get(0).status());
        assertEquals(ItemRow.Status.NEXT, runs.course().rows().get(1).status());
        // All levels of the reading are in the course, also those that came too fast to be shown.
        assertEquals(
                stage.entries()
                        .get(0)
                        .reading()
                        .orElseThrow()
                        .channels()
                        .get(0)
                        .sweep()
                        .size(),
                runs.course().progress().course().count());
        assertTrue(runs.course()
                .progress()
                .figure(LiveFigure.Kind.SUPPLY_VOLTS)
                .value()
                .isPresent());
    }

    @Test
    void goesOnWhereTheLogEndsAfterTheProjectWasOpenedAnew() throws Exception {
        RunDesk runs = stage.ready();
        runs.runNext();
        ended(runs);
        stage.desk.close(Unsaved.DISCARD);
        assertEquals(RunStage.NO_PROJECT, runs.stage());
        stage.desk.open(folder, Unsaved.DISCARD, session -> {}, failure -> {});
        stage.until(
                "it is ready again",
                () -> runs.stage() == RunStage.READY && runs.whyNot().isEmpty());
        assertEquals(ItemRow.Status.DONE, runs.course().rows().get(0).status());
        assertEquals(ItemRow.Status.NEXT, runs.course().rows().get(1).status());
        assertEquals(ConsoleStage.SIMULATED, runs.choices().driverId());
        assertEquals("N. N.", runs.choices().operator());
    }

    @Test
    void runsNothingWithoutABench() {
        RunDesk runs = stage.runs();
        runs.begin();
        stage.until("the plan is open", () -> runs.dryRuns().found().isPresent());
        assertEquals("Choose a bench first.", runs.whyNot().orElseThrow());
        runs.runNext();
        assertFalse(runs.running());
        assertEquals("Choose a bench first.", runs.message().orElseThrow().sentence());
    }

    @Test
    void saysWhenTheBenchDriverGoesAndIsReadyWhenItComesBack() {
        RunDesk runs = stage.ready();
        SimulatedBenchDriver other = new SimulatedBenchDriver();
        stage.catalog.bindDriver(other);
        stage.catalog.unbindDriver(stage.simulated);
        stage.settle();
        assertTrue(runs.whyNot().isEmpty(), "the other of the same id took its place");
        stage.catalog.unbindDriver(other);
        stage.settle();
        assertTrue(runs.whyNot().orElseThrow().contains("is not there"));
        stage.catalog.bindDriver(other);
        stage.settle();
        assertTrue(runs.whyNot().isEmpty());
    }

    @Test
    void aSecondMeasurementAtAStepIsAnItemOfItsOwn() {
        RunDesk runs = stage.ready();
        runs.choose(choices -> choices.withMeasured(
                "stereo-8ohm-11V5", List.of("org.ohmstead.power-at-end-point", "org.ohmstead.residual-noise")));
        stage.until(
                "the plan is longer",
                () -> runs.whyNot().isEmpty() && runs.course().rows().size() == 33);
        assertEquals(
                List.of("org.ohmstead.power-at-end-point", "org.ohmstead.residual-noise"),
                runs.course().rows().stream()
                        .limit(2)
                        .map(row -> row.item().measurementId())
                        .toList());
    }

    @Test
    void aWarningAsksForAYesAndAnErrorForbids() throws Exception {
        stage.catalog.bindPrecaution(new Careful());
        RunDesk runs = stage.ready();
        runs.runNext();
        assertFalse(runs.running());
        assertTrue(runs.message().orElseThrow().sentence().startsWith(Careful.WARNING));
        Problem warning = runs.dryRuns()
                .of(runs.course().rows().get(0).item())
                .orElseThrow()
                .unconfirmed()
                .get(0);
        runs.deeds().confirm(List.of(new LogDeeds.Warned("stereo-8ohm-11V5", warning)), "Measured today.", "N. N.");
        stage.until("the yes counts", () -> runs.dryRuns()
                .of(runs.course().rows().get(0).item())
                .orElseThrow()
                .mayRun());
        runs.runNext();
        ended(runs);
        assertEquals(ItemRow.Status.DONE, runs.course().rows().get(0).status());
        runs.runNext();
        assertFalse(runs.running());
        assertTrue(runs.message().orElseThrow().sentence().startsWith(Careful.ERROR));
        stage.until("the log was read", () -> stage.entries().size() >= 2);
        LogEntry yes = stage.entries().get(0);
        assertEquals("N. N.", yes.note().orElseThrow().who());
        assertTrue(yes.note().orElseThrow().text().contains("Measured today."));
    }

    @Test
    void theEmergencyStopEndsTheRunAndNothingRunsUntilItIsReleased() {
        RunDesk runs = on(ConsoleStage.SIMULATED, SLOW);
        runs.runNext();
        stage.until(
                "something was recorded", () -> runs.course().progress().look().isPresent());
        runs.emergencyStop();
        stage.until(
                "the bench is safe",
                () -> runs.stopped().filter(EmergencyStop.Report::answered).isPresent());
        assertEquals(List.of(), runs.stopped().orElseThrow().wrong());
        ended(runs);
        assertTrue(runs.halted());
        assertTrue(runs.course().ended().orElseThrow().outcome() instanceof RunOutcome.EmergencyStopped);
        runs.runNext();
        assertFalse(runs.running());
        runs.choose(choices -> choices.withDriver(RealBench.ID, Map.of()));
        assertEquals(ConsoleStage.SIMULATED, runs.choices().driverId());
        runs.deeds().release("N. N.");
        stage.until("it was released", () -> !runs.halted() && runs.whyNot().isEmpty());
        assertTrue(runs.stopped().isEmpty());
        stage.until("the log says so", () -> stage.entries().stream()
                .flatMap(entry -> entry.note().stream())
                .anyMatch(note -> note.text().equals("The emergency stop was released.")));
    }

    @Test
    void theEmergencyStopTakesBackWhatThePersonIsAsked() {
        stage.catalog.bindDriver(new TypedBenchDriver(stage.questions));
        RunDesk runs = on("org.ohmstead.bench.typed", Map.of("output", "volts and distortion"));
        runs.runNext();
        stage.until("the person is asked", () -> stage.questions.asked().isPresent());
        runs.emergencyStop();
        stage.until(
                "the bench is safe",
                () -> runs.stopped().filter(EmergencyStop.Report::answered).isPresent());
        ended(runs);
        assertTrue(stage.questions.asked().isEmpty());
        assertTrue(stage.questions.warnings().get(0).contains("switch the supply off now"));
    }

    @Test
    void saysThatThereIsNothingToStop() {
        stage.runs().emergencyStop();
        stage.settle();
        assertTrue(stage.runs().message().orElseThrow().sentence().contains("no bench is open here"));
    }

    @Test
    void restsOnARealBenchUntilItIsToldToGoOn() {
        stage.catalog.bindDriver(new RealBench());
        stage.rest = Duration.ofMinutes(30);
        RunDesk runs = on(RealBench.ID, Map.of());
        runs.runNext();
        stage.until("it rests", () -> runs.course().rest().isPresent());
        assertEquals(ItemRow.Status.RESTING, runs.course().rows().get(0).status());
        runs.deeds().goOnNow();
        ended(runs);
        assertEquals(ItemRow.Status.DONE, runs.course().rows().get(0).status());
        assertTrue(runs.course().rest().isEmpty());
    }

    @Test
    void cancelsInAnOrderlyWay() {
        RunDesk runs = on(ConsoleStage.SIMULATED, SLOW);
        runs.runNext();
        stage.until(
                "something was recorded", () -> runs.course().progress().look().isPresent());
        runs.deeds().cancel(runs.choices().operator());
        ended(runs);
        assertTrue(runs.course().ended().orElseThrow().outcome() instanceof RunOutcome.Cancelled);
        assertEquals(ItemRow.Status.FAILED, runs.course().rows().get(0).status());
        assertFalse(runs.halted());
    }

    @Test
    void skipsAndTakesBackWithAReason() {
        RunDesk runs = stage.ready();
        runs.deeds().skip(runs.course().rows().get(0).item(), "No such load today.", "N. N.");
        stage.until("it was skipped", () -> runs.course().rows().get(0).status() == ItemRow.Status.SKIPPED);
        assertEquals("No such load today.", runs.course().rows().get(0).sentence());
        runs.runNext();
        ended(runs);
        ItemRow done = runs.course().rows().get(1);
        assertEquals(ItemRow.Status.DONE, done.status());
        runs.deeds().voidEntry(done.entryIds().get(0), "Lead came loose.", "N. N.");
        stage.until("it is to be done again", () -> runs.course().rows().get(1).status() == ItemRow.Status.VOIDED);
        assertTrue(runs.course().rows().get(1).sentence().contains("Lead came loose."));
        assertEquals(done.item(), runs.course().next().orElseThrow().item());
    }

    @Test
    void followsWhatOthersDoToTheLog() {
        RunDesk runs = stage.ready();
        runs.runNext();
        ended(runs);
        stage.until("the log was read", () -> stage.entries().size() >= 2);
        stage.desk.voidEntry(runs.course().rows().get(0).entryIds().get(0), "N. N.", "Looked odd.", failure -> {
            throw new AssertionError(failure);
        });
        stage.until("the plan followed", () -> runs.course().rows().get(0).status() == ItemRow.Status.VOIDED);
    }

    @Test
    void wantsEditsSavedBeforeItRuns() {
        RunDesk runs = stage.ready();
        stage.desk.session().orElseThrow().edit("Test", project -> project.withTitle("Another title"));
        stage.settle();
        assertEquals(RunStage.UNSAVED, runs.stage());
        runs.runNext();
        assertFalse(runs.running());
        stage.desk.save(() -> {}, failure -> {
            throw new AssertionError(failure);
        });
        stage.until("it is ready", () -> runs.whyNot().isEmpty());
        assertEquals("Another title", runs.project().orElseThrow().title());
    }

    @Test
    void closingTheProjectEndsTheRunAndKeepsTheLogWhole() throws Exception {
        RunDesk runs = on(ConsoleStage.SIMULATED, SLOW);
        runs.runNext();
        stage.until(
                "something was recorded", () -> runs.course().progress().look().isPresent());
        stage.desk.close(Unsaved.DISCARD);
        assertFalse(runs.running());
        runs.close();
        try (TestLog log = TestLog.openReadOnly(folder.resolve("log.db"))) {
            assertTrue(log.verify().intact());
            assertTrue(log.entries(LogQuery.everything()).stream()
                    .anyMatch(entry -> entry.kind() == EntryKind.NOTE
                            && entry.note().orElseThrow().text().contains("cancelled")));
        }
    }

    @Test
    void runsAllThatIsLeftAndGoesOnAfterAFailureWhenTold() {
        stage.catalog.bindPrecaution(new Careful());
        RunDesk runs = stage.ready();
        List<String> four = runs.course().rows().stream()
                .limit(4)
                .map(row -> row.item().stepId())
                .toList();
        runs.course().rows().stream()
                .map(ItemRow::item)
                .filter(item -> !four.contains(item.stepId()))
                .forEach(item -> runs.deeds().skip(item, "Not today.", "N. N."));
        stage.until(
                "only four are left",
                () -> runs.course().rows().stream().filter(ItemRow::open).count() == 4);
        runs.runAll(false);
        ended(runs);
        assertEquals(4, runs.course().rows().stream().filter(ItemRow::open).count());
        runs.runAll(true);
        ended(runs);
        assertEquals(ItemRow.Status.FAILED, runs.course().rows().get(0).status());
        assertEquals(ItemRow.Status.FAILED, runs.course().rows().get(1).status());
        assertEquals(ItemRow.Status.DONE, runs.course().rows().get(2).status());
        assertEquals(ItemRow.Status.DONE, runs.course().rows().get(3).status());
        stage.until("the log is whole", () -> stage.desk.log().state() == LogState.WHOLE);
    }
}
