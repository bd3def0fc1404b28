// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.LoadImpedance;
import org.ohmstead.signal.WaveformAnalyzer;

/**
 * Output power at an end point, from a recorded sweep of levels: distortion-limited power, clipping-onset power, power at a level;
 * steady tone or burst. Follows the idea of the distortion-limited output power of IEC 60268-3 (clause text from memory).
 */
public final class PowerProcedure {
    /** Id under which readings of this procedure stand in the log. */
    public static final String ID = "org.ohmstead.power-at-end-point";

    /** Version of the procedure; it changes whenever the same captures would give other figures. */
    public static final String VERSION = "1.0.0";

    private final Project project;
    private final String projectRevision;
    private final String softwareVersion;
    private final String operator;

    /**
     * Makes a procedure for one project as it stands.
     *
     * @param project whose loads, meters and amplifier count
     * @param projectRevision hash of it, kept with each reading
     * @param softwareVersion kept with each reading
     * @param operator who recorded; may be empty
     */
    public PowerProcedure(Project project, String projectRevision, String softwareVersion, String operator) {
        this.project = project;
        this.projectRevision = projectRevision;
        this.softwareVersion = softwareVersion;
        this.operator = operator;
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
        BenchLoad load = project.load(step.loadId())
                .orElseThrow(() -> new EvaluationException("The step \"" + step.id() + "\" names the load \""
                        + step.loadId() + "\", which the project does not have. Add it or correct the step."));
        List<RecordedLevel> levels = recorded.stream()
                .sorted(Comparator.comparingDouble(RecordedLevel::driveDb))
                .toList();
        if (levels.isEmpty()) {
            throw new EvaluationException("The step \"" + step.id() + "\" has no recordings. Record its levels first.");
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
        List<ChannelReading> readings = new ArrayList<>();
        for (int channel = 0; channel < channelCount; channel++) {
            LoadBranch branch = load.branches().get(channel);
            readings.add(channelReading(step, channelName(step.mode(), channel), branch, channels.get(channel), notes));
        }
        return new Reading(
                step.id(),
                step.mode(),
                load.id(),
                load.nominalOhms(),
                step.stimulus(),
                step.endPoint(),
                levels.stream()
                        .map(RecordedLevel::recordedAt)
                        .max(Comparator.naturalOrder())
                        .orElseThrow(),
                conditions(levels),
                readings,
                provenance(levels),
                List.copyOf(notes));
    }

    private void analyze(
            Step step, BenchLoad load, RecordedLevel level, List<List<AnalyzedLevel>> channels, Set<String> notes)
            throws EvaluationException {
        Capture capture = read(level);
        if (capture.channels().size() < channels.size() || load.branches().size() < channels.size()) {
            throw new EvaluationException(String.format(
                    Locale.ROOT,
                    "%s has %d channel(s) and the load \"%s\" has %d resistance(s), but the step \"%s\" needs %d of each. Record"
                            + " all channels together, or correct the step.",
                    level.fileName(),
                    capture.channels().size(),
                    load.id(),
                    load.branches().size(),
                    step.id(),
                    channels.size()));
        }
        for (int channel = 0; channel < channels.size(); channel++) {
            LoadBranch branch = load.branches().get(channel);
            AnalysisSettings settings = AnalysisSettings.forLoad(impedance(branch))
                    .withFrequencyHz(step.stimulus().frequencyHz());
            ChannelAnalysis analysis;
            try {
                analysis = WaveformAnalyzer.analyze(capture.channels().get(channel), settings);
            } catch (CaptureException e) {
                throw new EvaluationException(
                        level.fileName() + ", channel " + channelName(step.mode(), channel) + ": " + e.getMessage(), e);
            }
            channels.get(channel)
                    .add(new AnalyzedLevel(
                            level.driveDb(),
                            level.supplyVolts(),
                            level.supplyAmps(),
                            level.captureSha256(),
                            powerWatts(step, level, analysis),
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
            throw new EvaluationException(level.fileName() + ": " + e.getMessage(), e);
        }
    }

    private static double powerWatts(Step step, RecordedLevel level, ChannelAnalysis analysis)
            throws EvaluationException {
        if (step.stimulus() instanceof Stimulus.ToneBurst) {
            return analysis.burst()
                    .orElseThrow(() -> new EvaluationException(level.fileName()
                            + ": no tone burst was found, but the step \"" + step.id()
                            + "\" is a burst. Check the stimulus, and that the capture holds a whole burst."))
                    .powerWatts();
        }
        if (analysis.burst().isPresent()) {
            throw new EvaluationException(level.fileName() + ": the tone comes in bursts, but the step \"" + step.id()
                    + "\" wants a steady tone. Check the stimulus, or that the recording did not begin too early.");
        }
        return analysis.powerWatts();
    }

    private static LoadImpedance impedance(LoadBranch branch) {
        return branch.inductanceHenries() > 0
                ? new LoadImpedance.SeriesInductance(branch.ohms(), branch.inductanceHenries())
                : new LoadImpedance.Resistance(branch.ohms());
    }

    private ChannelReading channelReading(
            Step step, String name, LoadBranch branch, List<AnalyzedLevel> levels, Set<String> notes)
            throws EvaluationException {
        EndPointResult result = EndPointFinder.find(levels, step.endPoint());
        if (result.outcome() == EndPointOutcome.NOT_REACHED) {
            notes.add(
                    "Channel " + name
                            + ": the end point was not reached; the power is a lower bound. Record higher levels if it is safe.");
        } else if (result.outcome() == EndPointOutcome.ALREADY_BEYOND) {
            notes.add("Channel " + name
                    + ": every level is beyond the end point; the power is an upper bound. Record lower levels.");
        }
        List<UncertaintyPart> parts = PowerUncertainty.parts(
                result, branch, project.bench(), project.amplifier().supplyType());
        AnalyzedLevel nearest = levels.get(result.nearestLevel());
        return new ChannelReading(
                name,
                result.outcome(),
                branch.ohms(),
                result.powerWatts(),
                PowerUncertainty.combinedWatts(parts),
                result.outputVoltsRms(),
                nearest.analysis().frequencyHz(),
                result.thdFRatio(),
                result.supplyVolts(),
                result.supplyAmps(),
                parts,
                levels.stream().map(PowerProcedure::sweepPoint).toList(),
                nearest.analysis().harmonics().stream()
                        .map(harmonic -> new HarmonicFigure(harmonic.order(), harmonic.ratioToFundamental()))
                        .toList());
    }

    private static SweepPoint sweepPoint(AnalyzedLevel level) {
        return new SweepPoint(
                level.driveDb(),
                level.analysis().outputVoltsRms(),
                level.powerWatts(),
                level.analysis().thdFRatio(),
                level.analysis().thdPlusNoiseRRatio(),
                level.analysis().clipping().clipped(),
                level.supplyVolts(),
                level.supplyAmps(),
                level.captureSha256());
    }

    private static Conditions conditions(List<RecordedLevel> levels) {
        RecordedLevel last = levels.stream()
                .max(Comparator.comparing(RecordedLevel::recordedAt))
                .orElseThrow();
        OptionalDouble ambient = last.ambientCelsius();
        return new Conditions(ambient, last.caseCelsius());
    }

    private Provenance provenance(List<RecordedLevel> levels) {
        LocalDate day = levels.get(0).recordedAt().atZone(ZoneOffset.UTC).toLocalDate();
        List<InstrumentUsed> instruments = project.bench().meters().stream()
                .map(meter -> new InstrumentUsed(
                        meter.id(), meter.quantity(), meter.name(), meter.calibratedOn(), meter.isOverdueOn(day)))
                .toList();
        List<CaptureUsed> captures = levels.stream()
                .map(level -> new CaptureUsed(level.captureSha256(), level.fileName(), level.voltsPerFullScale()))
                .toList();
        return new Provenance(projectRevision, ID, VERSION, softwareVersion, operator, instruments, captures);
    }

    private static String channelName(Mode mode, int channel) {
        return mode == Mode.BRIDGED ? "A+B" : String.valueOf((char) ('A' + channel));
    }
}
