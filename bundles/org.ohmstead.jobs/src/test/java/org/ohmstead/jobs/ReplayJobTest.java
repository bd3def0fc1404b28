// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Step;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;

class ReplayJobTest {
    @TempDir
    static Path shared;

    @TempDir
    Path folder;

    private static Path five;

    @BeforeAll
    static void record() throws Exception {
        five = DemoSteps.recordings(shared.resolve("five"), DemoSteps.FIVE);
    }

    /** Notes each step and cancels once so many are done. */
    private static final class Notes implements JobProgress {
        private final int stopAfter;
        private final List<Integer> done = new ArrayList<>();
        private final List<String> remarks = new ArrayList<>();
        private volatile boolean stop;

        Notes(int stopAfter) {
            this.stopAfter = stopAfter;
        }

        @Override
        public void step(int count, int total, String what) {
            assertEquals(DemoSteps.FIVE.size(), total);
            assertFalse(what.isBlank());
            done.add(count);
            stop = stop || count >= stopAfter;
        }

        @Override
        public boolean cancelled() {
            return stop;
        }

        @Override
        public void remark(String sentence) {
            remarks.add(sentence);
        }
    }

    private static List<String> stepIds(List<LogEntry> entries) {
        return entries.stream()
                .map(entry -> entry.reading().orElseThrow().stepId())
                .toList();
    }

    @Test
    void logsInThePlansOrderTheSameOnOneThreadAndOnSeveral() throws Exception {
        ProjectFolder alone = DemoSteps.project(folder.resolve("alone"));
        ProjectFolder several = DemoSteps.project(folder.resolve("several"));
        new ReplayJob(alone, DemoSteps.VERSION).withWorkers(1).run(five, false, JobProgress.SILENT);
        ReplayOutcome outcome =
                new ReplayJob(several, DemoSteps.VERSION).withWorkers(4).run(five, false, JobProgress.SILENT);
        List<String> planned = several.project().plan().stream()
                .map(Step::id)
                .filter(DemoSteps.FIVE::contains)
                .toList();
        assertEquals(planned, stepIds(outcome.logged()));
        assertEquals(
                DemoSteps.entries(alone).stream().map(LogEntry::bodyText).toList(),
                DemoSteps.entries(several).stream().map(LogEntry::bodyText).toList());
        assertEquals(List.of(), outcome.failures());
        try (TestLog log = several.readLog()) {
            assertTrue(log.verify().intact());
        }
    }

    @Test
    void tellsEachStepOnceAndNeverBackwards() throws Exception {
        Notes notes = new Notes(Integer.MAX_VALUE);
        new ReplayJob(DemoSteps.project(folder), DemoSteps.VERSION).run(five, false, notes);
        assertEquals(List.of(0, 1, 2, 3, 4, 5), notes.done);
    }

    @Test
    void keepsWhatWasLoggedWhenItIsCancelledAndGoesOnFromThere() throws Exception {
        ProjectFolder project = DemoSteps.project(folder);
        ReplayJob job = new ReplayJob(project, DemoSteps.VERSION).withWorkers(1);
        assertThrows(CancellationException.class, () -> job.run(five, false, new Notes(2)));
        List<LogEntry> kept = DemoSteps.entries(project);
        assertTrue(kept.size() >= 2 && kept.size() < DemoSteps.FIVE.size(), kept.size() + " entries");
        ReplayOutcome rest = job.run(five, false, JobProgress.SILENT);
        assertEquals(stepIds(kept), rest.alreadyLogged());
        assertEquals(DemoSteps.FIVE.size() - kept.size(), rest.logged().size());
        assertEquals(DemoSteps.FIVE.size(), DemoSteps.entries(project).size());
        assertTrue(
                DemoSteps.filesIn(project.folder()).stream()
                        .noneMatch(file -> file.toString().endsWith(".tmp")),
                "half-copied captures");
    }

    @Test
    void freesTheFolderWhenItIsCancelled() throws Exception {
        ProjectFolder project = DemoSteps.project(folder);
        ReplayJob job = new ReplayJob(project, DemoSteps.VERSION);
        assertThrows(CancellationException.class, () -> job.run(five, false, new Notes(0)));
        ProjectLock lock = ProjectLock.acquire(project.folder());
        try (lock) {
            assertEquals(project.folder().toRealPath(), lock.folder());
        }
    }

    @Test
    void logsStepsAgainOnlyWhenAsked() throws Exception {
        ProjectFolder project = DemoSteps.project(folder);
        ReplayJob job = new ReplayJob(project, DemoSteps.VERSION);
        job.run(five, false, JobProgress.SILENT);
        assertEquals(0, job.run(five, false, JobProgress.SILENT).logged().size());
        assertEquals(
                DemoSteps.FIVE.size(),
                job.run(five, true, JobProgress.SILENT).logged().size());
    }

    @Test
    void saysWhichStepCouldNotBeEvaluatedAndLogsTheOthers() throws Exception {
        Path recordings = DemoSteps.recordings(folder.resolve("recordings"), DemoSteps.FIVE);
        Path missing = recordings.resolve("stereo-4ohm-14V4-1kHz-L03.wav");
        Files.delete(missing);
        ProjectFolder project = DemoSteps.project(folder.resolve("project"));
        ReplayOutcome outcome = new ReplayJob(project, DemoSteps.VERSION).run(recordings, false, JobProgress.SILENT);
        assertEquals(1, outcome.failures().size());
        String failure = outcome.failures().get(0);
        assertTrue(failure.startsWith("Step stereo-4ohm-14V4 was not logged. The capture " + missing), failure);
        assertEquals(DemoSteps.FIVE.size() - 1, outcome.logged().size());
    }

    @Test
    void remarksOnFieldsThatTheListShouldNotHave() throws Exception {
        Path recordings = DemoSteps.recordings(folder.resolve("recordings"), DemoSteps.FIVE);
        Path list = recordings.resolve(ReplayJob.LIST_NAME);
        Files.writeString(list, Files.readString(list).replace("\"operator\"", "\"moonPhase\": 3, \"operator\""));
        Notes notes = new Notes(Integer.MAX_VALUE);
        new ReplayJob(DemoSteps.project(folder.resolve("project")), DemoSteps.VERSION).run(recordings, false, notes);
        assertEquals(1, notes.remarks.size(), notes.remarks.toString());
        assertTrue(notes.remarks.get(0).contains("moonPhase"), notes.remarks.toString());
    }

    @Test
    void refusesAFolderWithoutAListAndStepsThatThePlanLacks() throws Exception {
        ReplayJob job = new ReplayJob(DemoSteps.project(folder.resolve("project")), DemoSteps.VERSION);
        JobException noList = assertThrows(JobException.class, () -> job.run(folder, false, JobProgress.SILENT));
        assertTrue(noList.getMessage().contains(ReplayJob.LIST_NAME), noList.getMessage());
        Path recordings = DemoSteps.recordings(folder.resolve("recordings"), DemoSteps.FIVE.subList(0, 1));
        Path list = recordings.resolve(ReplayJob.LIST_NAME);
        Files.writeString(list, Files.readString(list).replace("\"stereo-8ohm-11V5\"", "\"no-such-step\""));
        JobException unknown = assertThrows(JobException.class, () -> job.run(recordings, false, JobProgress.SILENT));
        assertTrue(unknown.getMessage().contains("no-such-step"), unknown.getMessage());
    }

    @Test
    void addsNothingToALogThatWasChanged() throws Exception {
        ProjectFolder project = DemoSteps.project(folder);
        ReplayJob job = new ReplayJob(project, DemoSteps.VERSION);
        job.run(five, false, JobProgress.SILENT);
        DemoSteps.tamper(project, "T. Est", "T. Xst");
        JobException broken = assertThrows(JobException.class, () -> job.run(five, true, JobProgress.SILENT));
        assertEquals(JobException.Reason.BROKEN_LOG, broken.reason());
        assertTrue(broken.getMessage().contains("Restore the log from a backup."), broken.getMessage());
        assertEquals(DemoSteps.FIVE.size(), DemoSteps.entries(project).size());
    }

    @Test
    void runsUnderALockThatItsCallerHoldsOnlyWhenToldSo() throws Exception {
        ProjectFolder project = DemoSteps.project(folder);
        ReplayJob job = new ReplayJob(project, DemoSteps.VERSION);
        ProjectLock lock = ProjectLock.acquire(project.folder());
        try (lock) {
            assertThrows(ProjectFileException.class, () -> job.run(five, false, JobProgress.SILENT));
            assertEquals(
                    DemoSteps.FIVE.size(),
                    job.withLockHeld()
                            .run(five, false, JobProgress.SILENT)
                            .logged()
                            .size());
            assertThrows(ProjectFileException.class, () -> ProjectLock.acquire(project.folder()), "lock was let go");
        }
    }

    @Test
    void needsAVersionToKeepWithItsReadings() throws Exception {
        ProjectFolder project = DemoSteps.project(folder);
        assertThrows(IllegalArgumentException.class, () -> new ReplayJob(project, " "));
    }
}
