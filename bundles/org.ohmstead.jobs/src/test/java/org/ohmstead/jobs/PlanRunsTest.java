// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.RecordingSource.Recorded;
import org.ohmstead.measure.engine.ItemState;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanSetup;
import org.ohmstead.measure.engine.PlanState;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rest;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.ScheduleTask;

class PlanRunsTest {
    private static final String POWER = "org.ohmstead.power-at-end-point";
    private static final String BURST = "org.ohmstead.burst-power";
    private static final PartSharing NO_PARTS = OneLump.NO_PARTS;
    private static final String HOT_STEP = OneLump.HOT_STEP;
    /** The case is held to a reading with an uncertainty of 1 K, so not wholly. */
    private static final double REST_SECONDS = 0.5;

    @TempDir
    private Path folder;

    private Project demo() throws Exception {
        return DemoSteps.project(folder.resolve("demo")).project();
    }

    @Test
    void eachStepGetsWhatItsStimulusAsksFor() throws Exception {
        Project demo = demo();
        List<PlanItem> items = PlanRuns.items(demo);
        assertEquals(
                demo.plan().stream().map(Step::id).toList(),
                items.stream().map(PlanItem::stepId).toList());
        for (PlanItem item : items) {
            boolean burst = item.stepId().startsWith("burst");
            assertEquals(burst ? BURST : POWER, item.measurementId(), item.stepId());
            assertEquals(
                    burst ? Map.of("onSeconds", "0.02", "periodSeconds", "0.5", "lowLevelDb", "-20.0") : Map.of(),
                    item.settings());
        }
        assertEquals(Map.of(), PlanRuns.item(demo.plan().get(0), BURST).settings());
    }

    @Test
    void aStepWithoutItsLoadIsLeftOut() throws Exception {
        Project demo = demo();
        Project without = demo.withLoads(demo.loads().stream()
                .filter(load -> !load.id().equals(demo.plan().get(0).loadId()))
                .toList());
        assertTrue(PlanRuns.items(without).size() < demo.plan().size());
        assertTrue(PlanRuns.items(without).stream()
                .noneMatch(item -> item.stepId().equals(demo.plan().get(0).id())));
    }

    @Test
    void aCheckStandardThatIsDueIsSaidBeforeEachStep() throws Exception {
        CheckStandard daily = new CheckStandard(
                "r1",
                "Resistor",
                "",
                "resistance",
                "",
                "ohm",
                20,
                0.01,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                1);
        Project demo = demo().withCheckStandards(List.of(daily));
        PlanSetup setup = PlanRuns.setup(demo, "ab".repeat(32), folder.resolve("demo"), PlanRuns.items(demo), "");
        assertEquals(1, setup.precautions().size());
        for (Step step : demo.plan()) {
            List<Problem> said = setup.precautions().get(0).check(demo, step);
            assertEquals(1, said.size());
            assertEquals(Severity.NOTE, said.get(0).severity());
            assertTrue(said.get(0).what().contains("never measured"), said.toString());
        }
    }

    @Test
    void recordedLevelsTakeThePlaceOfASearch() throws Exception {
        Path recordings = DemoSteps.recordings(folder.resolve("recordings"), DemoSteps.FIVE);
        List<PlanItem> items = PlanRuns.atRecordedLevels(
                List.of(
                        new PlanItem("stereo-4ohm-14V4", POWER, Map.of("settleSeconds", "0.2")),
                        new PlanItem("stereo-4ohm-13V5", POWER, Map.of()),
                        new PlanItem("burst-stereo-4ohm-14V4", BURST, Map.of())),
                recordings);
        assertEquals("0.2", items.get(0).settings().get("settleSeconds"));
        assertEquals(12, items.get(0).settings().get("levels").split(",").length);
        assertEquals(Map.of(), items.get(1).settings(), "nothing was recorded of it");
        assertEquals(Map.of(), items.get(2).settings());
        JobException missing =
                assertThrows(JobException.class, () -> PlanRuns.atRecordedLevels(items, folder.resolve("nowhere")));
        assertTrue(missing.getMessage().contains("nowhere"), missing.getMessage());
    }

    @Test
    void aFolderOfRecordingsIsASourceForTheReplayedBench() throws Exception {
        Path recordings = DemoSteps.recordings(folder.resolve("recordings"), DemoSteps.FIVE);
        Project demo = demo();
        RecordingFolders source = new RecordingFolders();
        List<Recorded> recorded = source.recordings(
                recordings, new Subject(demo, demo.step("stereo-4ohm-14V4").orElseThrow()));
        assertEquals(12, recorded.size());
        assertEquals(recordings, recorded.get(0).file().getParent());
        Subject other = new Subject(demo, demo.step("stereo-4ohm-13V5").orElseThrow());
        assertEquals(List.of(), source.recordings(recordings, other));
        for (Path wrong : List.of(Path.of(""), folder.resolve("nowhere"))) {
            MeasurementException refused =
                    assertThrows(MeasurementException.class, () -> source.recordings(wrong, other));
            assertTrue(refused.getMessage().contains("Choose the folder"), refused.getMessage());
        }
    }

    @Test
    void whatNoForecastKnowsNeedsNoRest() throws Exception {
        Project empty = demo().withPlan(List.of());
        assertSame(Rests.NONE, PlanRuns.rests(empty, NO_PARTS, List.of()));
        Rests cold = PlanRuns.rests(demo(), NO_PARTS, List.of());
        assertEquals(Duration.ZERO, cold.before(item(HOT_STEP), new PlanState(List.of(), false)));
        assertEquals(Duration.ZERO, cold.before(item("gone"), new PlanState(List.of(), false)));
    }

    @Test
    void theRestIsAsLongAsTheHotCaseTakesToCoolEnough() throws Exception {
        Project project = OneLump.in(demo());
        LogEntry entry = logged(BenchKind.REAL, OptionalDouble.of(79));
        double expected = OneLump.expectedRestSeconds(project, 79);
        assertTrue(expected > 60, "the case must be too hot for the test to tell anything: " + expected);
        double rest = restSeconds(project, List.of(entry), entry.recordedAt());
        assertEquals(expected, rest, REST_SECONDS);
        assertEquals(
                expected - 50,
                restSeconds(project, List.of(entry), entry.recordedAt().plusSeconds(50)),
                REST_SECONDS);
        assertEquals(0, restSeconds(project, List.of(entry), entry.recordedAt().plusSeconds(3600)), REST_SECONDS);
    }

    @Test
    void aSimulatedBenchWarmedNothing() throws Exception {
        LogEntry entry = logged(BenchKind.SIMULATED, OptionalDouble.of(79));
        assertEquals(0, restSeconds(OneLump.in(demo()), List.of(entry), entry.recordedAt()), 0);
    }

    @Test
    void whatStandsInNoListOfEntriesCountsAsForecast() throws Exception {
        Project project = OneLump.in(demo());
        ScheduleTask task = PlanForecast.of(project, NO_PARTS).task().orElseThrow();
        HeatJob job = OneLump.job(task);
        MovedClock clock = new MovedClock();
        Rests rests = ThermalRests.of(project, NO_PARTS, List.of(), clock, clock::nanos);
        List<String> ids = new ArrayList<>();
        double restSeconds = 0;
        int done = 0;
        // The same hot step without a pause until it needs a rest.
        while (restSeconds == 0 && done < 200) {
            done++;
            clock.now = clock.now.plusMillis(Math.round(1000 * job.onSeconds()));
            ids.add("R" + done);
            ids.add("F" + done);
            ItemState state = new ItemState(item(HOT_STEP), ItemState.Status.DONE, List.copyOf(ids), "");
            restSeconds = seconds(rests.before(item(HOT_STEP), new PlanState(List.of(state), false)));
        }
        double onRise =
                OneLump.CASE_KELVIN_PER_WATT * job.watts().get(task.model().sourceIndex("amplifier"));
        double celsius = task.ambientCelsius()
                + onRise
                        * -Math.expm1(-done
                                * job.onSeconds()
                                / (OneLump.CASE_KELVIN_PER_WATT * OneLump.CASE_JOULES_PER_KELVIN));
        assertEquals(OneLump.expectedRestSeconds(project, celsius), restSeconds, REST_SECONDS);
    }

    @Test
    void aListThatGrowsTellsTheTemperaturesOfThisRun() throws Exception {
        Project project = OneLump.in(demo());
        MovedClock clock = new MovedClock();
        List<LogEntry> growing = new ArrayList<>();
        Rests rests = ThermalRests.of(project, NO_PARTS, growing, clock, clock::nanos);
        PlanState state = new PlanState(List.of(), false);
        assertEquals(0, seconds(rests.before(item(HOT_STEP), state)), 0);
        LogEntry hot = logged(BenchKind.REAL, OptionalDouble.of(79));
        growing.add(hot);
        clock.now = hot.recordedAt().plusSeconds(3);
        assertEquals(
                OneLump.expectedRestSeconds(project, 79) - 3,
                seconds(rests.before(item(HOT_STEP), state)),
                REST_SECONDS);
    }

    @Test
    void aRestThatSomebodyAskedForIsKept() throws Exception {
        Project project = OneLump.in(demo());
        Project resting = project.withHeat(
                project.heat().withPacing(project.heat().pacing().withRests(List.of(new Rest(HOT_STEP, 1000)))));
        LogEntry entry = logged(BenchKind.REAL, OptionalDouble.empty());
        assertEquals(
                900, restSeconds(resting, List.of(entry), entry.recordedAt().plusSeconds(100)), REST_SECONDS);
    }

    private static double restSeconds(Project project, List<LogEntry> entries, Instant now) {
        return seconds(ThermalRests.of(project, NO_PARTS, entries, Clock.fixed(now, ZoneOffset.UTC), () -> 0)
                .before(item(HOT_STEP), new PlanState(List.of(), false)));
    }

    private static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }

    private static PlanItem item(String stepId) {
        return new PlanItem(stepId, POWER, Map.of());
    }

    private LogEntry logged(BenchKind kind, OptionalDouble caseCelsius) throws Exception {
        try (TestLog log = TestLog.open(folder.resolve(kind + "log.db"))) {
            return log.append(HeatEntries.figures(kind, Instant.parse("2026-03-02T09:14:05Z"), caseCelsius));
        }
    }
}
