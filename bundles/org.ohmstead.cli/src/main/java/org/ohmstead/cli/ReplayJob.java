// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.ohmstead.measure.standard.EvaluationException;
import org.ohmstead.measure.standard.PowerProcedure;
import org.ohmstead.measure.standard.RecordedLevel;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.model.json.Recording;
import org.ohmstead.model.json.RecordingsFile;
import org.ohmstead.model.json.RecordingsList;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** Carries out a plan from recorded captures: stores them, makes a reading of each step, and logs it at once. */
final class ReplayJob {
    /** The list that comes with a folder of recordings. */
    static final String LIST_NAME = "recordings.json";

    /**
     * What became of the steps.
     *
     * @param logged entries written now
     * @param alreadyLogged ids of steps left out since the same captures are in the log
     * @param failures a sentence for each step that could not be evaluated
     */
    record Outcome(List<LogEntry> logged, List<String> alreadyLogged, List<String> failures) {}

    private final ProjectFolder project;
    private final Console console;

    ReplayJob(ProjectFolder project, Console console) {
        this.project = project;
        this.console = console;
    }

    /**
     * Runs it.
     *
     * @param recordingsFolder where the captures and their list lie
     * @param again whether to log steps again whose captures are already in the log
     */
    Outcome run(Path recordingsFolder, boolean again) throws ProjectFileException, InputException, TestLogException {
        Path listFile = recordingsFolder.resolve(LIST_NAME);
        if (!Files.isRegularFile(listFile)) {
            throw new InputException(
                    "The folder " + recordingsFolder + " has no " + LIST_NAME
                            + ". It lists each capture with its step, drive level and meter readings; see the demo's recordings.");
        }
        RecordingsList list = RecordingsFile.read(listFile);
        list.problems().forEach(problem -> console.message(problem.what() + " " + problem.remedy()));
        Map<String, List<Recording>> bySteps = list.recordings().stream()
                .collect(Collectors.groupingBy(Recording::stepId, LinkedHashMap::new, Collectors.toList()));
        checkSteps(bySteps, listFile);
        List<LogEntry> logged = new ArrayList<>();
        List<String> alreadyLogged = new ArrayList<>();
        List<String> failures = new ArrayList<>();
        PowerProcedure procedure = new PowerProcedure(
                project.project(), project.loaded().revisionSha256(), Ohmstead.version(), list.operator());
        try (ProjectLock lock = ProjectLock.acquire(project.folder());
                TestLog log = TestLog.open(project.logFile())) {
            ProjectFolder.requireWhole(log);
            Set<Set<String>> known = again ? Set.of() : captureSets(log);
            int done = 0;
            for (Step step : project.project().plan()) {
                List<Recording> recordings = bySteps.get(step.id());
                if (recordings == null) {
                    continue;
                }
                console.progress(++done, bySteps.size(), step.id());
                try {
                    Optional<LogEntry> entry = step(step, recordings, recordingsFolder, procedure, log, known);
                    entry.ifPresentOrElse(logged::add, () -> alreadyLogged.add(step.id()));
                } catch (EvaluationException e) {
                    failures.add("Step " + step.id() + " was not logged. " + e.getMessage());
                }
            }
        }
        return new Outcome(logged, alreadyLogged, failures);
    }

    private void checkSteps(Map<String, List<Recording>> bySteps, Path listFile) throws InputException {
        List<String> unknown = bySteps.keySet().stream()
                .filter(id -> project.project().step(id).isEmpty())
                .toList();
        if (!unknown.isEmpty()) {
            throw new InputException(listFile + " has recordings for steps that the plan does not have: "
                    + String.join(", ", unknown) + ". Add them to the plan in project.json or correct the list.");
        }
    }

    private Optional<LogEntry> step(
            Step step,
            List<Recording> recordings,
            Path folder,
            PowerProcedure procedure,
            TestLog log,
            Set<Set<String>> known)
            throws TestLogException, EvaluationException {
        CaptureStore store = new CaptureStore(project.folder());
        List<RecordedLevel> levels = new ArrayList<>();
        for (Recording recording : recordings) {
            Path file = folder.resolve(recording.fileName());
            if (!Files.isRegularFile(file)) {
                throw new EvaluationException("The capture " + file + " is listed but not there."
                        + " Copy it into the folder, or take it off the list.");
            }
            CaptureStore.StoredCapture stored = store.store(file);
            levels.add(new RecordedLevel(
                    stored.file(),
                    stored.sha256(),
                    recording.fileName(),
                    recording.voltsPerFullScale(),
                    recording.driveDb(),
                    recording.supplyVolts(),
                    recording.supplyAmps(),
                    recording.caseCelsius(),
                    recording.ambientCelsius(),
                    recording.recordedAt()));
        }
        Set<String> hashes = levels.stream().map(RecordedLevel::captureSha256).collect(Collectors.toSet());
        if (known.contains(hashes)) {
            return Optional.empty();
        }
        return Optional.of(log.append(procedure.evaluate(step, levels)));
    }

    private static Set<Set<String>> captureSets(TestLog log) throws TestLogException {
        Set<Set<String>> sets = new LinkedHashSet<>();
        for (LogEntry entry : log.entries(LogQuery.everything())) {
            if (!entry.voided() && entry.reading().isPresent()) {
                Reading reading = entry.reading().get();
                sets.add(reading.provenance().captures().stream()
                        .map(CaptureUsed::sha256)
                        .collect(Collectors.toSet()));
            }
        }
        return sets;
    }
}
