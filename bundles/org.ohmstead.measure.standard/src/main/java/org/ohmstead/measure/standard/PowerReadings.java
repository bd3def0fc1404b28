// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Step;
import org.ohmstead.model.SweepPoint;

/** Makes a reading of power out of levels that were analysed. */
final class PowerReadings {
    /** Stands where the engine fills in what only the log knows. */
    static final String NOT_LOGGED = "not logged yet";

    private PowerReadings() {}

    /**
     * Makes a reading.
     *
     * @param facts of each level, rising, at least one
     * @param channels the levels of each channel, rising
     * @param notes what is said so far; more may be added
     * @param provenance what the reading depended on
     * @param sharing tells how power falls on the parts of a load
     */
    static Reading reading(
            Project project,
            Step step,
            List<LevelFacts> facts,
            List<List<AnalyzedLevel>> channels,
            Set<String> notes,
            Provenance provenance,
            PartSharing sharing)
            throws EvaluationException {
        BenchLoad load = project.load(step.loadId()).orElseThrow();
        BudgetSetting setting = BudgetSetting.of(project, step.stimulus(), facts, sharing);
        List<ChannelReading> readings = new ArrayList<>();
        for (int channel = 0; channel < channels.size(); channel++) {
            String name = LevelAnalysis.channelName(step.mode(), channel);
            readings.add(
                    channelReading(setting, step, name, load.branches().get(channel), channels.get(channel), notes));
        }
        LevelFacts last =
                facts.stream().max(Comparator.comparing(LevelFacts::recordedAt)).orElseThrow();
        return new Reading(
                step.id(),
                step.mode(),
                load.id(),
                load.nominalOhms(),
                step.stimulus(),
                step.endPoint(),
                last.recordedAt(),
                new Conditions(last.ambientCelsius(), last.caseCelsius()),
                readings,
                provenance,
                List.copyOf(notes));
    }

    /** Returns the reading that a finished search amounts to, not yet with what only the log knows. */
    static Reading ofSearch(Subject subject, LevelSearch search, MeasurementInfo info, PartSharing sharing)
            throws MeasurementException {
        List<LevelFacts> facts = search.facts();
        Provenance provenance = new Provenance(
                NOT_LOGGED,
                info.id(),
                info.version(),
                NOT_LOGGED,
                "",
                instruments(subject.project(), facts),
                facts.stream().map(LevelFacts::capture).toList(),
                Optional.of(Specimen.of(subject.project())));
        try {
            return reading(
                    subject.project(),
                    subject.step(),
                    facts,
                    search.channels(),
                    new LinkedHashSet<>(search.notes()),
                    provenance,
                    sharing);
        } catch (EvaluationException e) {
            throw Faults.passedOn(e);
        }
    }

    /** The project's meters as they stood on the day of the first level. */
    static List<InstrumentUsed> instruments(Project project, List<LevelFacts> facts) {
        LocalDate day = facts.get(0).recordedAt().atZone(ZoneOffset.UTC).toLocalDate();
        return project.bench().meters().stream()
                .map(meter -> new InstrumentUsed(
                        meter.id(), meter.quantity(), meter.name(), meter.calibratedOn(), meter.isOverdueOn(day)))
                .toList();
    }

    private static ChannelReading channelReading(
            BudgetSetting setting,
            Step step,
            String name,
            LoadBranch branch,
            List<AnalyzedLevel> levels,
            Set<String> notes)
            throws EvaluationException {
        EndPointResult result = EndPointFinder.find(levels, step.endPoint());
        if (result.outcome() == EndPointOutcome.NOT_REACHED) {
            notes.add("Channel " + name
                    + ": the end point was not reached; the power is a lower bound. Record higher levels if it"
                    + " is safe.");
        } else if (result.outcome() == EndPointOutcome.ALREADY_BEYOND) {
            notes.add("Channel " + name
                    + ": every level is beyond the end point; the power is an upper bound. Record lower levels.");
        }
        PowerBudget budget = PowerUncertainty.of(result, branch, setting);
        budget.notes().forEach(note -> notes.add("Channel " + name + ": " + note));
        AnalyzedLevel nearest = levels.get(result.nearestLevel());
        return new ChannelReading(
                name,
                result.outcome(),
                branch.ohms(),
                result.powerWatts(),
                budget.combinedWatts(),
                result.outputVoltsRms(),
                nearest.analysis().frequencyHz(),
                result.thdFRatio(),
                result.supplyVolts(),
                result.supplyAmps(),
                budget.parts(),
                levels.stream().map(PowerReadings::sweepPoint).toList(),
                nearest.analysis().harmonics().stream()
                        .map(harmonic -> new HarmonicFigure(harmonic.order(), harmonic.ratioToFundamental()))
                        .toList(),
                budget.correlations());
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
}
