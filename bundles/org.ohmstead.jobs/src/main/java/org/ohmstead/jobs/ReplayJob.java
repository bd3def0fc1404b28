// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.ohmstead.measure.standard.BudgetSetting;
import org.ohmstead.measure.standard.PowerProcedure;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Step;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.model.json.Recording;
import org.ohmstead.model.json.RecordingsFile;
import org.ohmstead.model.json.RecordingsList;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * Carries out a plan from recorded captures: stores them, makes a reading of each step, and logs it at once. Captures of different
 * steps are analysed side by side on up to four processors; readings are logged in the plan's order and are the same as one by one.
 */
public final class ReplayJob {
    private static final Messages TEXTS = Messages.of(ReplayJob.class);

    /** Name of the list that comes with a folder of recordings. */
    public static final String LIST_NAME = "recordings.json";

    private static final int MOST_WORKERS = 4;

    private final ProjectFolder project;
    private final String softwareVersion;
    private final boolean lockHeld;
    private final int workers;
    private final PartSharing sharing;

    /**
     * Makes a job that locks the project's folder while it runs.
     *
     * @param project whose plan is carried out
     * @param softwareVersion version that is kept with each reading, not blank
     */
    public ReplayJob(ProjectFolder project, String softwareVersion) {
        this(
                project,
                softwareVersion,
                false,
                Math.min(Runtime.getRuntime().availableProcessors(), MOST_WORKERS),
                BudgetSetting.NO_SHARING);
    }

    private ReplayJob(
            ProjectFolder project, String softwareVersion, boolean lockHeld, int workers, PartSharing sharing) {
        this.project = Objects.requireNonNull(project, "project");
        if (softwareVersion.isBlank()) {
            throw new IllegalArgumentException(
                    "softwareVersion is blank; it must name the version that makes readings");
        }
        this.softwareVersion = softwareVersion;
        this.lockHeld = lockHeld;
        this.workers = workers;
        this.sharing = Objects.requireNonNull(sharing, "sharing");
    }

    /** Returns the same job with something that tells how power falls on the parts of a load, for what their heat does to uncertainty. */
    public ReplayJob withSharing(PartSharing newSharing) {
        return new ReplayJob(project, softwareVersion, lockHeld, workers, newSharing);
    }

    /** Returns the same job for a caller that holds the lock of the project's folder already and keeps it until the job ends. */
    public ReplayJob withLockHeld() {
        return new ReplayJob(project, softwareVersion, true, workers, sharing);
    }

    /** Returns the same job with so many threads. */
    ReplayJob withWorkers(int count) {
        return new ReplayJob(project, softwareVersion, lockHeld, count, sharing);
    }

    /**
     * Runs it.
     *
     * @param recordingsFolder where the captures and their list lie
     * @param again whether to log steps again whose captures are already in the log
     * @param progress hears of each step; when it says stop, no further step is logged
     * @return what became of the steps that have recordings
     * @throws ProjectFileException when the list cannot be read, or somebody else has the project open
     * @throws JobException when the list is missing or names unknown steps, or the log was changed after it was written
     * @throws TestLogException when the store of captures or the log fails; what was logged before stays
     * @throws CancellationException when it was stopped; what was logged before stays, and a further run leaves those steps out
     */
    public ReplayOutcome run(Path recordingsFolder, boolean again, JobProgress progress)
            throws ProjectFileException, JobException, TestLogException {
        Path listFile = recordingsFolder.resolve(LIST_NAME);
        if (!Files.isRegularFile(listFile)) {
            throw new JobException(TEXTS.text("recordings.noList", recordingsFolder, LIST_NAME));
        }
        RecordingsList list = RecordingsFile.read(listFile);
        list.problems().forEach(problem -> progress.remark(problem.what() + " " + problem.remedy()));
        Map<String, List<Recording>> bySteps = list.recordings().stream()
                .collect(Collectors.groupingBy(Recording::stepId, LinkedHashMap::new, Collectors.toList()));
        checkSteps(bySteps, listFile);
        if (lockHeld) {
            return replay(recordingsFolder, list.operator(), bySteps, again, progress);
        }
        ProjectLock lock = ProjectLock.acquire(project.folder());
        try (lock) {
            return replay(recordingsFolder, list.operator(), bySteps, again, progress);
        }
    }

    private void checkSteps(Map<String, List<Recording>> bySteps, Path listFile) throws JobException {
        List<String> unknown = bySteps.keySet().stream()
                .filter(id -> project.project().step(id).isEmpty())
                .toList();
        if (!unknown.isEmpty()) {
            throw new JobException(TEXTS.text("recordings.unknownSteps", listFile, String.join(", ", unknown)));
        }
    }

    private ReplayOutcome replay(
            Path recordingsFolder,
            String operator,
            Map<String, List<Recording>> bySteps,
            boolean again,
            JobProgress progress)
            throws JobException, TestLogException {
        List<LogEntry> logged = new ArrayList<>();
        List<String> alreadyLogged = new ArrayList<>();
        List<String> failures = new ArrayList<>();
        List<Step> steps = project.project().plan().stream()
                .filter(step -> bySteps.containsKey(step.id()))
                .toList();
        PowerProcedure procedure = new PowerProcedure(
                        project.project(), project.loaded().revisionSha256(), softwareVersion, operator)
                .withSharing(sharing);
        try (TestLog log = LogTrust.openToAdd(project.logFile(), progress::remark)) {
            StepWork work = new StepWork(
                    project.folder(), recordingsFolder, procedure, again ? Set.of() : captureSets(log), progress);
            try (OrderedResults<StepWork.Result> results = new OrderedResults<>(
                    workers,
                    steps.stream()
                            .map(step -> work.of(step, bySteps.get(step.id())))
                            .toList())) {
                int done = 0;
                for (Step step : steps) {
                    progress.stopIfCancelled();
                    progress.step(done, steps.size(), step.id());
                    StepWork.Result result = results.next();
                    if (result.failure().isPresent()) {
                        failures.add(TEXTS.text(
                                "step.notLogged", step.id(), result.failure().get()));
                    } else if (result.reading().isPresent()) {
                        logged.add(log.append(result.reading().get()));
                    } else {
                        alreadyLogged.add(step.id());
                    }
                    done++;
                    if (done == steps.size()) {
                        progress.step(done, done, step.id());
                    }
                }
            }
        }
        return new ReplayOutcome(logged, alreadyLogged, failures);
    }

    private static Set<Set<String>> captureSets(TestLog log) throws TestLogException {
        Set<Set<String>> sets = new LinkedHashSet<>();
        for (LogEntry entry : log.entries(LogQuery.everything())) {
            if (!entry.voided() && entry.reading().isPresent()) {
                sets.add(entry.reading().get().provenance().captures().stream()
                        .map(CaptureUsed::sha256)
                        .collect(Collectors.toSet()));
            }
        }
        return sets;
    }
}
