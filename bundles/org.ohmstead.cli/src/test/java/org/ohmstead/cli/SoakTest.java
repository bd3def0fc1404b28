// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.exchange.CsvDialect;
import org.ohmstead.exchange.EntrySource;
import org.ohmstead.exchange.ReadingsCsv;
import org.ohmstead.jobs.PlanRuns;
import org.ohmstead.load.LoadStepPrecaution;
import org.ohmstead.measure.bench.SimulatedBenchDriver;
import org.ohmstead.measure.engine.BenchChoice;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanRun;
import org.ohmstead.measure.engine.PlanSetup;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.measure.engine.RunLimits;
import org.ohmstead.measure.engine.RunOutcome;
import org.ohmstead.measure.engine.Runner;
import org.ohmstead.measure.standard.PowerAtEndPoint;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;

/**
 * Hours of work at a simulated bench in little time: plan after plan into one log, which is checked and exported in between. Of nothing
 * may there be more and more. Some seconds long here; {@code -Dohmstead.soak.hours=8} makes it a working day by the bench's clock.
 */
class SoakTest {
    private static final double HOURS = Double.parseDouble(System.getProperty("ohmstead.soak.hours", "0"));
    private static final long SHORT_NANOS = TimeUnit.SECONDS.toNanos(5);
    private static final int LEAST_ROUNDS = 6;

    /** What a person takes between two steps, and the amplifier rests. */
    private static final Duration CHANGE_OVER = Duration.ofSeconds(50);

    @TempDir
    private Path folder;

    private final DayClock clock = new DayClock();
    private final Soak soak = new Soak();
    private int results;

    /** A clock that the bench's time moves. */
    private static final class DayClock extends Clock {
        private Instant now = Instant.parse("2026-03-03T08:00:00Z");

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    @Test
    void nothingGrows() throws Exception {
        Path project = BenchWords.project(folder);
        LoadedProject loaded = ProjectFile.read(project);
        List<PlanItem> items = PlanRuns.items(loaded.project()).stream()
                .filter(item -> item.stepId().startsWith("stereo-8ohm"))
                .toList();
        PlanSetup setup = PlanRuns.setup(loaded.project(), loaded.revisionSha256(), project, items, "N. N.");
        Instant begun = clock.instant();
        long started = System.nanoTime();
        int rounds = 0;
        while (rounds < LEAST_ROUNDS || !enough(begun, started)) {
            round(setup, project, rounds);
            rounds++;
        }
        double hours = Duration.between(begun, clock.instant()).toMillis() / 3.6e6;
        System.out.printf(
                Locale.ROOT,
                "soak: %.2f simulated hours in %.0f s, %d rounds, %d results; %s%n",
                hours,
                (System.nanoTime() - started) / 1e9,
                rounds,
                results,
                soak.summary());
        assertEquals(List.of(), soak.growth(), soak.summary());
        assertTrue(results >= LEAST_ROUNDS, "next to nothing was measured");
    }

    private boolean enough(Instant begun, long started) {
        return HOURS > 0
                ? Duration.between(begun, clock.instant()).toMillis() >= HOURS * 3.6e6
                : System.nanoTime() - started > SHORT_NANOS;
    }

    private void round(PlanSetup setup, Path project, int number) throws Exception {
        Catalog catalog = new Catalog();
        catalog.bindMeasurement(new PowerAtEndPoint());
        catalog.bindDriver(new SimulatedBenchDriver(clock));
        catalog.bindPrecaution(new LoadStepPrecaution());
        try (TestLog log = TestLog.open(project.resolve(TestLog.FILE_NAME));
                Runner runner = new Runner(
                        catalog, new BenchChoice("org.ohmstead.bench.simulated", Map.of()), RunLimits.usual())) {
            PlanRun plan = new PlanRun(setup, catalog, runner, log, Rests.NONE);
            PlanItem item = setup.items().get(number % setup.items().size());
            RunOutcome.Finished finished = assertInstanceOf(RunOutcome.Finished.class, plan.run(item));
            results++;
            finished.record().last().ifPresent(seen -> clock.now = seen.at().plus(CHANGE_OVER));
            assertTrue(log.verify().intact());
            ReadingsCsv.write(
                    EntrySource.of(log, LogQuery.everything()), CsvDialect.values()[0], project.resolve("out.csv"));
        }
        dropCaptures(project.resolve("captures"));
        if (HOURS == 0 || number % 4 == 0) {
            soak.look();
        }
    }

    /** They would fill the disk, and another test looks after them. */
    private static void dropCaptures(Path captures) throws Exception {
        try (Stream<Path> all = Files.walk(captures)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                Files.delete(file);
            }
        }
    }
}
