// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.measure.standard.EvaluationException;
import org.ohmstead.measure.standard.PowerProcedure;
import org.ohmstead.measure.standard.RecordedLevel;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/**
 * A project with one logged sweep of four levels in two channels: a sine that is cut at 27 V (A) and 26 V (B) from the
 * third level on.
 *
 * @param folder the project's folder
 * @param project as it lies there
 * @param entry the reading in the log
 */
public record LoggedSweep(Path folder, Project project, LogEntry entry) {
    private static final String STEP = "stereo-4ohm-14V4";
    private static final double[] PEAK_VOLTS = {12, 24, 28, 34};

    /** Makes the project from the demonstration project. */
    public static LoggedSweep in(Path folder)
            throws IOException, CaptureException, TestLogException, EvaluationException, ProjectFileException {
        Path demo = Path.of("..", "..", "demo-data", "larkspur.ohmstead", "project.json");
        Files.copy(demo, folder.resolve("project.json"));
        Project project = ProjectFile.read(folder.resolve("project.json")).project();
        Step step = project.step(STEP).orElseThrow();
        CaptureStore store = new CaptureStore(folder);
        List<RecordedLevel> levels = new ArrayList<>();
        for (int i = 0; i < PEAK_VOLTS.length; i++) {
            double peak = PEAK_VOLTS[i];
            Path source = Files.createTempDirectory("levels").resolve("L0" + (i + 1) + ".wav");
            Waves.write(source, cut(peak, 27), cut(peak, 26));
            CaptureStore.StoredCapture stored = store.store(source);
            levels.add(new RecordedLevel(
                    stored.file(),
                    stored.sha256(),
                    source.getFileName().toString(),
                    List.of(Waves.FULL_SCALE_VOLTS),
                    20 * Math.log10(peak / 40),
                    14.4,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Instant.parse("2026-03-02T09:14:05Z").plusSeconds(i)));
            Files.delete(source);
            Files.delete(source.getParent());
        }
        PowerProcedure procedure = new PowerProcedure(project, "cd".repeat(32), "0.1.0", "N. N.");
        try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME))) {
            return new LoggedSweep(folder, project, log.append(procedure.evaluate(step, levels)));
        }
    }

    private static double[] cut(double peakVolts, double limitVolts) {
        return Waves.of(
                4_800, 1_000, phase -> Math.max(-limitVolts, Math.min(limitVolts, peakVolts * Math.sin(phase))));
    }

    /** Returns the file of the capture at a level. */
    public Path captureFile(int level) throws IOException {
        String hash =
                entry.reading().orElseThrow().provenance().captures().get(level).sha256();
        return folder.resolve("captures").resolve(hash.substring(0, 2)).resolve(hash + ".wav");
    }
}
