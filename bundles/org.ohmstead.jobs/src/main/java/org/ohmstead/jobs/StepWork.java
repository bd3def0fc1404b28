// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.ohmstead.measure.standard.EvaluationException;
import org.ohmstead.measure.standard.PowerProcedure;
import org.ohmstead.measure.standard.RecordedLevel;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.model.json.Recording;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/** What is done for a step before its reading is logged. Works of different steps may run at the same time. */
final class StepWork {
    private static final Messages TEXTS = Messages.of(StepWork.class);

    /**
     * What came of a step: a reading, a sentence why there is none, or neither when its captures are in the log already.
     *
     * @param reading not yet logged
     * @param failure why it could not be evaluated
     */
    record Result(Optional<Reading> reading, Optional<String> failure) {}

    private final CaptureStore store;
    private final Path recordingsFolder;
    private final PowerProcedure procedure;
    private final Set<Set<String>> known;
    private final JobProgress progress;

    StepWork(
            Path projectFolder,
            Path recordingsFolder,
            PowerProcedure procedure,
            Set<Set<String>> known,
            JobProgress progress) {
        this.store = new CaptureStore(projectFolder);
        this.recordingsFolder = recordingsFolder;
        this.procedure = procedure;
        this.known = known;
        this.progress = progress;
    }

    Callable<Result> of(Step step, List<Recording> recordings) {
        return () -> {
            try {
                return new Result(reading(step, recordings), Optional.empty());
            } catch (EvaluationException e) {
                return new Result(Optional.empty(), Optional.of(e.getMessage()));
            }
        };
    }

    private Optional<Reading> reading(Step step, List<Recording> recordings)
            throws TestLogException, EvaluationException {
        List<RecordedLevel> levels = new ArrayList<>();
        for (Recording recording : recordings) {
            progress.stopIfCancelled();
            Path file = recordingsFolder.resolve(recording.fileName());
            if (!Files.isRegularFile(file)) {
                throw new EvaluationException(TEXTS.text("recordings.noCapture", file));
            }
            levels.add(level(recording, store.store(file)));
        }
        Set<String> hashes = levels.stream().map(RecordedLevel::captureSha256).collect(Collectors.toSet());
        if (known.contains(hashes)) {
            return Optional.empty();
        }
        progress.stopIfCancelled();
        return Optional.of(procedure.evaluate(step, levels));
    }

    private static RecordedLevel level(Recording recording, CaptureStore.StoredCapture stored) {
        return new RecordedLevel(
                stored.file(),
                stored.sha256(),
                recording.fileName(),
                recording.voltsPerFullScale(),
                recording.driveDb(),
                recording.supplyVolts(),
                recording.supplyAmps(),
                recording.caseCelsius(),
                recording.ambientCelsius(),
                recording.recordedAt());
    }
}
