// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.VerifyReport;

/** Kills a process 200 times, at random moments, while it carries out a plan. */
@Timeout(900)
class KilledPlanTest {
    private static final int KILLS = 200;
    private static final int LANES = 2;
    private static final int MOST_SEEN = 2;
    private static final int STEPS = 30;
    private static final long LONGEST_PAUSE_NANOS = TimeUnit.MILLISECONDS.toNanos(30);

    @TempDir
    Path folder;

    @Test
    void noAcknowledgedResultIsLostAndThePlanGoesOnWhereItWas() throws Exception {
        ChildProgram program = new ChildProgram(folder.resolve("program"));
        ExecutorService pool = Executors.newFixedThreadPool(LANES);
        try {
            List<Callable<Lane>> lanes = new ArrayList<>();
            for (int number = 0; number < LANES; number++) {
                Lane lane = new Lane(program, folder.resolve("lane" + number), new Random(7 + number));
                lanes.add(() -> lane.killed(KILLS / LANES));
            }
            int atWork = 0;
            int finished = 0;
            for (Future<Lane> lane : pool.invokeAll(lanes)) {
                atWork += lane.get().killedAtWork;
                finished += lane.get().plansFinished;
            }
            assertTrue(atWork > KILLS / 2, "killed behind a result of its own: " + atWork + " times");
            assertTrue(finished > 2 * LANES, "plans finished in spite of all: " + finished);
        } finally {
            pool.shutdownNow();
        }
    }

    /** One process after the other, each killed; a new project whenever the plan is finished. */
    private static final class Lane {
        private final ChildProgram program;
        private final Path folder;
        private final Random random;
        private final Set<String> acknowledged = new HashSet<>();
        private Path project;
        private int killsOfProject;
        private int killedAtWork;
        private int plansFinished;

        Lane(ChildProgram program, Path folder, Random random) throws IOException {
            this.program = program;
            this.folder = folder;
            this.random = random;
            begin();
        }

        private void begin() throws IOException {
            project = Files.createDirectories(folder.resolve("project" + plansFinished));
            acknowledged.clear();
            killsOfProject = 0;
        }

        Lane killed(int times) throws Exception {
            int kills = 0;
            while (kills < times) {
                kills += startAndKill() ? 1 : 0;
                if (check() == STEPS) {
                    finish();
                }
            }
            finish();
            return this;
        }

        /** Returns whether it was still running when it was killed. */
        private boolean startAndKill() throws Exception {
            Process process = program.start(project, STEPS);
            BufferedReader output = process.inputReader(StandardCharsets.UTF_8);
            assertEquals("ready", output.readLine());
            int before = acknowledged.size();
            for (int seen = random.nextInt(MOST_SEEN + 1); seen > 0; seen--) {
                take(output.readLine());
            }
            LockSupport.parkNanos((long) (random.nextDouble() * LONGEST_PAUSE_NANOS));
            // Through its handle, because the process itself would also close the output that is still to be read.
            process.toHandle().destroyForcibly();
            assertTrue(process.waitFor(60, TimeUnit.SECONDS));
            output.lines().forEach(this::take);
            boolean killed = process.exitValue() != 0;
            killsOfProject += killed ? 1 : 0;
            killedAtWork += killed && acknowledged.size() > before ? 1 : 0;
            return killed;
        }

        private void take(String line) {
            if (line != null && line.matches("F\\d{4,}")) {
                assertTrue(acknowledged.add(line), line + " was acknowledged twice");
            }
        }

        /** Returns how many entries there are. */
        private int check() throws Exception {
            try (TestLog log = TestLog.open(project.resolve(TestLog.FILE_NAME))) {
                VerifyReport report = log.verify();
                assertEquals(List.of(), report.faults());
                Set<String> there = log.entries(LogQuery.everything()).stream()
                        .map(LogEntry::id)
                        .collect(Collectors.toSet());
                assertTrue(there.containsAll(acknowledged), "acknowledged " + acknowledged + ", there " + there);
                assertTrue(
                        there.size() <= acknowledged.size() + killsOfProject,
                        "at most one for each kill was on its way: " + acknowledged.size() + ", " + there.size());
                return there.size();
            }
        }

        /** Lets the plan be carried out to its end and begins another. */
        private void finish() throws Exception {
            Process last = program.start(project, STEPS);
            List<String> lines =
                    last.inputReader(StandardCharsets.UTF_8).lines().toList();
            assertTrue(last.waitFor(60, TimeUnit.SECONDS));
            assertEquals("complete", lines.get(lines.size() - 1));
            lines.forEach(this::take);
            assertEquals(STEPS, check());
            everyStepIsThereOnceWithItsRecordings();
            plansFinished++;
            begin();
        }

        private void everyStepIsThereOnceWithItsRecordings() throws Exception {
            Map<String, Integer> times = new TreeMap<>();
            try (TestLog log = TestLog.open(project.resolve(TestLog.FILE_NAME))) {
                for (LogEntry entry : log.entries(LogQuery.everything())) {
                    MeasuredFigures figures = entry.figures().orElseThrow();
                    times.merge(figures.stepId(), 1, Integer::sum);
                    for (CaptureUsed capture : figures.provenance().captures()) {
                        Path file = project.resolve("captures")
                                .resolve(capture.sha256().substring(0, 2))
                                .resolve(capture.sha256() + ".wav");
                        assertEquals(capture.sha256(), CaptureStore.sha256(file));
                    }
                }
            }
            assertEquals(STEPS, times.size());
            assertEquals(Set.of(1), Set.copyOf(times.values()), "no step was measured twice");
        }
    }
}
