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
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Mode;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Range;
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
    private static final PartSharing NO_PARTS = (stock, branch) -> List.of();
    private static final String HOT_STEP = "stereo-2ohm-14V4";
    private static final double CASE_KELVIN_PER_WATT = 0.45;
    private static final double CASE_JOULES_PER_KELVIN = 2900;
    private static final double CASE_LIMIT_CELSIUS = 80;
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
        Project project = oneLump();
        LogEntry entry = logged(BenchKind.REAL, OptionalDouble.of(79));
        double expected = expectedRestSeconds(project, 79);
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
        assertEquals(0, restSeconds(oneLump(), List.of(entry), entry.recordedAt()), 0);
    }

    @Test
    void whatStandsInNoListOfEntriesCountsAsForecast() throws Exception {
        Project project = oneLump();
        ScheduleTask task = PlanForecast.of(project, NO_PARTS).task().orElseThrow();
        HeatJob job = job(task);
        MovedClock clock = new MovedClock();
        Rests rests = ThermalRests.of(project, NO_PARTS, List.of(), clock);
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
        double onRise = CASE_KELVIN_PER_WATT * job.watts().get(task.model().sourceIndex("amplifier"));
        double celsius = task.ambientCelsius()
                + onRise * -Math.expm1(-done * job.onSeconds() / (CASE_KELVIN_PER_WATT * CASE_JOULES_PER_KELVIN));
        assertEquals(expectedRestSeconds(project, celsius), restSeconds, REST_SECONDS);
    }

    @Test
    void aListThatGrowsTellsTheTemperaturesOfThisRun() throws Exception {
        Project project = oneLump();
        MovedClock clock = new MovedClock();
        List<LogEntry> growing = new ArrayList<>();
        Rests rests = ThermalRests.of(project, NO_PARTS, growing, clock);
        PlanState state = new PlanState(List.of(), false);
        assertEquals(0, seconds(rests.before(item(HOT_STEP), state)), 0);
        LogEntry hot = logged(BenchKind.REAL, OptionalDouble.of(79));
        growing.add(hot);
        clock.now = hot.recordedAt().plusSeconds(3);
        assertEquals(expectedRestSeconds(project, 79) - 3, seconds(rests.before(item(HOT_STEP), state)), REST_SECONDS);
    }

    /** A clock that a test moves. */
    private static final class MovedClock extends Clock {
        private Instant now = Instant.parse("2026-03-02T09:14:05Z");

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            throw new UnsupportedOperationException("one zone is enough");
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    @Test
    void aRestThatSomebodyAskedForIsKept() throws Exception {
        Project project = oneLump();
        Project resting = project.withHeat(
                project.heat().withPacing(project.heat().pacing().withRests(List.of(new Rest(HOT_STEP, 1000)))));
        LogEntry entry = logged(BenchKind.REAL, OptionalDouble.empty());
        assertEquals(
                900, restSeconds(resting, List.of(entry), entry.recordedAt().plusSeconds(100)), REST_SECONDS);
    }

    private static double restSeconds(Project project, List<LogEntry> entries, Instant now) {
        return seconds(ThermalRests.of(project, NO_PARTS, entries, Clock.fixed(now, ZoneOffset.UTC))
                .before(item(HOT_STEP), new PlanState(List.of(), false)));
    }

    private static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }

    private static PlanItem item(String stepId) {
        return new PlanItem(stepId, POWER, Map.of());
    }

    /** The demo with a case that is one lump of known size, and nothing else that gets warm. */
    private Project oneLump() throws Exception {
        Project demo = demo();
        AmplifierHeat lump = AmplifierHeat.NONE
                .withOutputClass(OutputClass.CLASS_AB)
                .withRailVolts(OptionalDouble.of(31.4))
                .withConverterEfficiencyRatio(Optional.of(Range.of(0.86)))
                .withIdleWatts(Optional.of(Range.of(8)))
                .withCaseKelvinPerWatt(Optional.of(Range.of(CASE_KELVIN_PER_WATT)))
                .withCaseJoulesPerKelvin(Optional.of(Range.of(CASE_JOULES_PER_KELVIN)))
                .withCaseLimitCelsius(OptionalDouble.of(CASE_LIMIT_CELSIUS));
        return demo.withHeat(demo.heat().withAmplifier(lump));
    }

    /**
     * Closed form of one lump: it goes towards P R with the time constant R C. At the end of the step it may be at the limit less the
     * margin; at its beginning it must be that much cooler; at rest it goes towards the idle power's rise.
     */
    private static double expectedRestSeconds(Project project, double caseCelsius) {
        ScheduleTask task = PlanForecast.of(project, NO_PARTS).task().orElseThrow();
        HeatJob job = job(task);
        double tau = CASE_KELVIN_PER_WATT * CASE_JOULES_PER_KELVIN;
        double onRise = CASE_KELVIN_PER_WATT * job.watts().get(task.model().sourceIndex("amplifier"));
        double idleRise =
                CASE_KELVIN_PER_WATT * task.idleWatts().get(task.model().sourceIndex("amplifier"));
        double mostAtEnd = CASE_LIMIT_CELSIUS - task.marginKelvin() - task.ambientCelsius();
        double mostAtStart = onRise + (mostAtEnd - onRise) * Math.exp(job.onSeconds() / tau);
        double now = caseCelsius - task.ambientCelsius();
        return tau * Math.log((now - idleRise) / (mostAtStart - idleRise));
    }

    private static HeatJob job(ScheduleTask task) {
        return task.jobs().stream()
                .filter(each -> each.id().equals(HOT_STEP))
                .findFirst()
                .orElseThrow();
    }

    private LogEntry logged(BenchKind kind, OptionalDouble caseCelsius) throws Exception {
        try (TestLog log = TestLog.open(folder.resolve(kind + "log.db"))) {
            return log.append(new MeasuredFigures(
                    "stereo-4ohm-14V4",
                    Mode.STEREO,
                    "4ohm",
                    14.4,
                    Instant.parse("2026-03-02T09:14:05Z"),
                    new DriverUsed("org.example.bench", "1.0.0", kind, Map.of()),
                    Map.of(),
                    List.of(new MeasuredFigure("power", "A", "", 90, "W", OptionalDouble.empty())),
                    new Conditions(OptionalDouble.empty(), caseCelsius),
                    new Provenance("ab", POWER, "1.0.0", "0.1.0", "", List.of(), List.of()),
                    List.of()));
        }
    }
}
