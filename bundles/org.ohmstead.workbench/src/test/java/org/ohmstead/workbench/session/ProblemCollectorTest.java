// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;

@Timeout(60)
class ProblemCollectorTest {
    private static final Problem GOOD = new Problem(Severity.NOTE, "$.title", "The title is short.", "Make it longer.");

    @TempDir
    Path parent;

    private final WorkProgress progress = new WorkProgress() {
        @Override
        public void step(int done, int total, String what) {
            assertTrue(done >= 0 && done <= total, done + " of " + total);
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };
    private ProjectView view;

    @BeforeEach
    void read() throws Exception {
        Path folder = SampleFolder.copyInto(parent);
        LoadedProject loaded = ProjectFile.read(folder);
        view = new ProjectView(folder, loaded.project(), List.of(), LogSnapshot.NONE, LocalDate.of(2026, 4, 1));
    }

    private static ProblemProvider named(String name, ProblemProvider provider) {
        return new ProblemProvider() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public List<Problem> problems(ProjectView asked) {
                return provider.problems(asked);
            }
        };
    }

    @Test
    void oneThatFailsIsNamedAndTheOthersGoOn() throws Exception {
        ProblemCollector collector = new ProblemCollector(Duration.ofSeconds(10));
        collector.add(named("Sour", asked -> {
            throw new IllegalStateException("no milk");
        }));
        collector.add(named("Null", asked -> null));
        collector.add(named("Linkage", asked -> {
            throw new NoClassDefFoundError("org/other/Missing");
        }));
        collector.add(named("Good", asked -> List.of(GOOD, GOOD)));
        List<Problem> problems = collector.collect(view, progress);
        assertEquals(4, problems.size());
        assertEquals(
                "The check \"Sour\" failed (no milk), so what it would find is not shown.",
                problems.get(0).what());
        assertEquals("check:Null", problems.get(1).where());
        assertTrue(problems.get(2).what().contains("org/other/Missing"));
        assertEquals(GOOD, problems.get(3));
        assertEquals(
                ProblemPlace.Section.OTHER,
                ProblemPlace.parse(problems.get(0).where()).section());
    }

    @Test
    void oneWithoutANameIsCalledByItsClass() throws Exception {
        ProblemCollector collector = new ProblemCollector(Duration.ofSeconds(10));
        collector.add(new ProblemProvider() {
            @Override
            public String name() {
                throw new IllegalStateException("nameless");
            }

            @Override
            public List<Problem> problems(ProjectView asked) {
                throw new IllegalStateException("useless");
            }
        });
        assertTrue(collector.collect(view, progress).get(0).what().contains("ProblemCollectorTest"));
    }

    @Test
    void oneThatHangsIsLeftBehindAndNotAskedUntilItComesBack() throws Exception {
        ProblemCollector collector = new ProblemCollector(Duration.ofMillis(200));
        CountDownLatch release = new CountDownLatch(1);
        CountDownLatch released = new CountDownLatch(1);
        collector.add(named("Slow", asked -> {
            boolean waiting = true;
            while (waiting) {
                try {
                    release.await();
                    waiting = false;
                } catch (InterruptedException ignoredAsBadCodeDoes) {
                    Thread.yield();
                }
            }
            released.countDown();
            return List.of(GOOD);
        }));
        assertTrue(collector.collect(view, progress).get(0).what().contains("took longer than"));
        assertTrue(collector.collect(view, progress).get(0).what().contains("still busy"));
        release.countDown();
        released.await();
        List<Problem> problems = collector.collect(view, progress);
        while (problems.get(0).what().contains("still busy")) {
            Thread.onSpinWait();
            problems = collector.collect(view, progress);
        }
        assertEquals(List.of(GOOD), problems);
    }

    @Test
    void oneTakenAwayIsNotAsked() throws Exception {
        ProblemCollector collector = new ProblemCollector(Duration.ofSeconds(10));
        Registration registration = collector.add(named("Good", asked -> List.of(GOOD)));
        registration.close();
        assertEquals(List.of(), collector.collect(view, progress));
    }

    @Test
    void ownChecksFindWhatTheFileTheProjectAndTheLogSay() throws Exception {
        ProblemCollector collector = ProblemDesk.usualCollector();
        ProjectView broken = new ProjectView(
                view.folder(),
                view.project().withPlan(List.of()),
                List.of(GOOD),
                new LogSnapshot(LogSnapshot.LogState.BROKEN, List.of(), "", "The test log is not whole."),
                view.today());
        List<Problem> problems = collector.collect(broken, progress);
        assertEquals(GOOD, problems.get(0));
        assertTrue(problems.stream().anyMatch(problem -> problem.where().equals("$.amplifier.ratings[0]")));
        Problem log = problems.get(problems.size() - 1);
        assertEquals("log.db", log.where());
        assertEquals(Severity.ERROR, log.severity());
    }

    @Test
    void ownChecksNameReadingsWhoseCapturesAreMissing() throws Exception {
        LogSnapshot log = SampleLog.of(view.folder(), 2);
        ProjectView withLog = new ProjectView(view.folder(), view.project(), List.of(), log, view.today());
        List<Problem> missing = new CaptureProblems().problems(withLog);
        assertEquals(2, missing.size());
        assertEquals("log.db#R0001", missing.get(0).where());
        assertTrue(missing.get(0).what().contains("a.wav"), missing.get(0).what());
        Path place = Files.createDirectories(view.folder().resolve("captures/ab"));
        Files.createFile(place.resolve(SampleLog.CAPTURE_SHA256 + ".wav"));
        assertEquals(List.of(), new CaptureProblems().problems(withLog));
    }
}
