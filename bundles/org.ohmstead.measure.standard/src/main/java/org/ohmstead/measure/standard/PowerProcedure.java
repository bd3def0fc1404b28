// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Step;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.units.text.Said;

/**
 * Output power at an end point, from a recorded sweep of levels: distortion-limited power, clipping-onset power, power at a level;
 * steady tone or burst. Follows the idea of the distortion-limited output power of IEC 60268-3 (clause text from memory).
 */
public final class PowerProcedure {
    /** Id under which readings of this procedure stand in the log. */
    public static final String ID = "org.ohmstead.power-at-end-point";

    /** Version of the procedure; it changes whenever the same captures would give other figures. */
    public static final String VERSION = "1.1.0";

    private final Project project;
    private final String projectRevision;
    private final String softwareVersion;
    private final String operator;
    private final PartSharing sharing;

    /**
     * Makes a procedure for one project as it stands.
     *
     * @param project whose loads, meters and amplifier count
     * @param projectRevision hash of it, kept with each reading
     * @param softwareVersion kept with each reading
     * @param operator who recorded; may be empty
     */
    public PowerProcedure(Project project, String projectRevision, String softwareVersion, String operator) {
        this(project, projectRevision, softwareVersion, operator, BudgetSetting.NO_SHARING);
    }

    private PowerProcedure(
            Project project, String projectRevision, String softwareVersion, String operator, PartSharing sharing) {
        this.project = project;
        this.projectRevision = projectRevision;
        this.softwareVersion = softwareVersion;
        this.operator = operator;
        this.sharing = sharing;
    }

    /** Returns this procedure with something that tells how power falls on the parts of a load, so that their warming is accounted for. */
    public PowerProcedure withSharing(PartSharing newSharing) {
        return new PowerProcedure(project, projectRevision, softwareVersion, operator, newSharing);
    }

    /**
     * Makes a reading of a step.
     *
     * @param step which step
     * @param recorded its levels in any order, at least one
     * @return the reading; not yet logged
     * @throws EvaluationException when a capture cannot be read or analysed, or does not fit the step
     */
    public Reading evaluate(Step step, List<RecordedLevel> recorded) throws EvaluationException {
        BenchLoad load =
                project.load(step.loadId()).orElseThrow(() -> Faults.evaluation("noLoad", step.id(), step.loadId()));
        List<RecordedLevel> levels = recorded.stream()
                .sorted(Comparator.comparingDouble(RecordedLevel::driveDb))
                .toList();
        if (levels.isEmpty()) {
            throw Faults.evaluation("noRecordings", step.id());
        }
        int channelCount = step.mode() == Mode.STEREO ? project.amplifier().channelCount() : 1;
        List<List<AnalyzedLevel>> channels = new ArrayList<>();
        for (int channel = 0; channel < channelCount; channel++) {
            channels.add(new ArrayList<>());
        }
        Set<String> notes = new LinkedHashSet<>();
        for (RecordedLevel level : levels) {
            analyze(step, load, level, channels, notes);
        }
        List<LevelFacts> facts = levels.stream().map(PowerProcedure::facts).toList();
        Provenance provenance = new Provenance(
                projectRevision,
                ID,
                VERSION,
                softwareVersion,
                operator,
                PowerReadings.instruments(project, facts),
                facts.stream().map(LevelFacts::capture).toList(),
                Optional.of(Specimen.of(project)));
        return PowerReadings.reading(project, step, facts, channels, notes, provenance, sharing);
    }

    private static LevelFacts facts(RecordedLevel level) {
        return new LevelFacts(
                new CaptureUsed(level.captureSha256(), level.fileName(), level.voltsPerFullScale()),
                level.caseCelsius(),
                level.ambientCelsius(),
                level.recordedAt());
    }

    private void analyze(
            Step step, BenchLoad load, RecordedLevel level, List<List<AnalyzedLevel>> channels, Set<String> notes)
            throws EvaluationException {
        Capture capture = read(level);
        if (capture.channels().size() < channels.size() || load.branches().size() < channels.size()) {
            throw Faults.evaluation(
                    "channels",
                    level.fileName(),
                    capture.channels().size(),
                    load.id(),
                    load.branches().size(),
                    step.id(),
                    channels.size());
        }
        for (int channel = 0; channel < channels.size(); channel++) {
            LoadBranch branch = load.branches().get(channel);
            ChannelAnalysis analysis;
            try {
                analysis = LevelAnalysis.analyze(
                        capture.channels().get(channel), branch, step.stimulus().frequencyHz());
            } catch (CaptureException e) {
                throw new EvaluationException(
                        Faults.said(
                                "inChannel",
                                level.fileName(),
                                LevelAnalysis.channelName(step.mode(), channel),
                                Said.by(e)),
                        e);
            }
            channels.get(channel)
                    .add(new AnalyzedLevel(
                            level.driveDb(),
                            level.supplyVolts(),
                            level.supplyAmps(),
                            level.captureSha256(),
                            LevelAnalysis.powerWatts(step.stimulus(), step.id(), level.fileName(), analysis),
                            analysis));
            for (String note : analysis.notes()) {
                notes.add(level.fileName() + ": " + note);
            }
        }
    }

    private static Capture read(RecordedLevel level) throws EvaluationException {
        double[] fullScale = level.voltsPerFullScale().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        try {
            return CaptureFile.read(level.captureFile(), fullScale);
        } catch (CaptureException e) {
            throw new EvaluationException(Faults.said("inFile", level.fileName(), Said.by(e)), e);
        }
    }
}
