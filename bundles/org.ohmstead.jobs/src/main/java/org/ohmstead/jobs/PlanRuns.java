// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.jar.Manifest;
import java.util.stream.Collectors;
import org.ohmstead.history.quality.QualityPrecaution;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanSetup;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.measure.standard.BurstPower;
import org.ohmstead.measure.standard.PowerProcedure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.Recording;
import org.ohmstead.model.json.RecordingsFile;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;

/** What it takes to carry out the plan of a project: used by the command line and the workbench alike. */
public final class PlanRuns {
    private static final String BURST_POWER = new BurstPower().info().id();
    private static final String VERSION = version();

    private PlanRuns() {}

    /**
     * Returns each step with the measurement that its stimulus asks for: burst power for bursts, else power at an end point. Power at a
     * set level is always the latter. Steps whose load the project does not have are left out.
     */
    public static List<PlanItem> items(Project project) {
        return project.plan().stream()
                .filter(step -> project.load(step.loadId()).isPresent())
                .map(step -> item(step, usualMeasurement(step)))
                .toList();
    }

    private static String usualMeasurement(Step step) {
        boolean burst =
                step.stimulus() instanceof Stimulus.ToneBurst && !(step.endPoint() instanceof EndPoint.FixedLevel);
        return burst ? BURST_POWER : PowerProcedure.ID;
    }

    /** Returns a step with a measurement; burst power gets the timing of the step's bursts. */
    public static PlanItem item(Step step, String measurementId) {
        if (measurementId.equals(BURST_POWER) && step.stimulus() instanceof Stimulus.ToneBurst burst) {
            return new PlanItem(
                    step.id(),
                    measurementId,
                    Map.of(
                            "onSeconds",
                            Double.toString(burst.onSeconds()),
                            "periodSeconds",
                            Double.toString(burst.periodSeconds()),
                            "lowLevelDb",
                            Double.toString(burst.lowLevelDb())));
        }
        return new PlanItem(step.id(), measurementId, Map.of());
    }

    /**
     * Returns items for a bench that plays recordings back: power at an end point takes the levels that were recorded of its step instead
     * of searching, and does not wait for anything to settle. What an item sets already stays.
     *
     * @param items what is to be measured
     * @param recordings where the recordings and their list lie
     * @throws JobException when the list cannot be read
     */
    public static List<PlanItem> atRecordedLevels(List<PlanItem> items, Path recordings) throws JobException {
        Map<String, List<Recording>> bySteps;
        try {
            bySteps = RecordingsFile.read(recordings.resolve(ReplayJob.LIST_NAME)).recordings().stream()
                    .collect(Collectors.groupingBy(Recording::stepId));
        } catch (ProjectFileException unreadable) {
            throw new JobException(unreadable.getMessage());
        }
        List<PlanItem> levelled = new ArrayList<>();
        for (PlanItem item : items) {
            List<Recording> recorded = bySteps.getOrDefault(item.stepId(), List.of());
            if (item.measurementId().equals(PowerProcedure.ID) && !recorded.isEmpty()) {
                Map<String, String> settings = new HashMap<>(Map.of(
                        "settleSeconds",
                        "0",
                        "levels",
                        recorded.stream()
                                .map(each -> Double.toString(each.driveDb()))
                                .collect(Collectors.joining(","))));
                settings.putAll(item.settings());
                levelled.add(new PlanItem(item.stepId(), item.measurementId(), settings));
            } else {
                levelled.add(item);
            }
        }
        return List.copyOf(levelled);
    }

    /**
     * Returns the setup of a run of this version of the software. Before each item the check standards are looked at by what the log in
     * the project's folder holds then: a serious alarm needs a yes, the others are shown.
     *
     * @param project the whole project
     * @param projectRevision hash that names the state of the project
     * @param projectFolder where the recordings are kept
     * @param items what is to be measured, in this order
     * @param operator who runs it; may be empty
     */
    public static PlanSetup setup(
            Project project, String projectRevision, Path projectFolder, List<PlanItem> items, String operator) {
        return new PlanSetup(project, projectRevision, projectFolder, items, operator, VERSION)
                .withPrecautions(List.of(
                        new QualityPrecaution(projectFolder.resolve(TestLog.FILE_NAME), Clock.systemDefaultZone())));
    }

    /**
     * Returns the rests that the heat forecast of the plan wants, from what the log holds so far; {@link Rests#NONE} where there is no
     * forecast. Before each item the state of the amplifier and of the loads is reckoned from what was really measured when, set right
     * by the case's temperature where it was read, and the rest is as short as keeps everything below its limits. Only results of real
     * benches have warmed anything. A computer's clock that is set back or forth makes rests longer, never shorter; only one that was slow
     * in an earlier run and was put right since is believed.
     *
     * @param project the whole project
     * @param sharing how power falls on the parts of a load
     * @param entries what the log holds. It is looked at anew before each item: a list that grows with the log, safe for several threads,
     *     makes it know the temperatures of this run too; of one that does not grow it takes what was done since as done as forecast
     */
    public static Rests rests(Project project, PartSharing sharing, List<LogEntry> entries) {
        return ThermalRests.of(project, sharing, entries, Clock.systemUTC(), System::nanoTime);
    }

    /** Returns the version of this bundle without its qualifier, as kept with each result. */
    private static String version() {
        try (InputStream stream = PlanRuns.class.getResourceAsStream("/META-INF/MANIFEST.MF")) {
            return Optional.ofNullable(stream == null ? null : new Manifest(stream).getMainAttributes())
                    .filter(attributes -> "org.ohmstead.jobs".equals(attributes.getValue("Bundle-SymbolicName")))
                    .map(attributes -> attributes.getValue("Bundle-Version"))
                    .map(text -> text.replaceFirst("^(\\d+\\.\\d+\\.\\d+).*$", "$1"))
                    .orElse("unbuilt");
        } catch (IOException unreadable) {
            throw new IllegalStateException("the program's own files cannot be read; install it anew", unreadable);
        }
    }
}
