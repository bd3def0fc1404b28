// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.standard.BudgetSetting;
import org.ohmstead.measure.standard.EndPointResult;
import org.ohmstead.measure.standard.EvaluationException;
import org.ohmstead.measure.standard.PowerBudget;
import org.ohmstead.measure.standard.PowerUncertainty;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/** How sure the figures of a logged capture are, from the meters and loads that the project lists. */
public final class Certainty {
    private final Optional<Project> project;
    private final Optional<Reading> reading;
    private final Optional<LevelChoice> level;

    private Certainty(Optional<Project> project, Optional<Reading> reading, Optional<LevelChoice> level) {
        this.project = project;
        this.reading = reading;
        this.level = level;
    }

    /** Nothing is known of the meters behind a file of the user's choice. */
    public static Certainty none() {
        return new Certainty(Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** Returns how sure the figures of one level of a reading are. */
    public static Certainty of(Project project, Reading reading, LevelChoice level) {
        return new Certainty(Optional.of(project), Optional.of(reading), Optional.of(level));
    }

    /** Returns a sentence on volts RMS, or empty text. */
    String ofVoltsRms(double voltsRms) {
        return project.flatMap(known -> known.bench().meterFor(MeterQuantity.OUTPUT_VOLTS))
                .map(meter -> ofVoltsRms(meter, voltsRms))
                .orElse("");
    }

    private static String ofVoltsRms(Meter meter, double voltsRms) {
        return Texts.say(
                "certainty.volts",
                Numbers.format("%.2g", Coverage.expanded(meter.accuracy().standardUncertainty(voltsRms))),
                Coverage.wordsWithShare(),
                meter.name());
    }

    /** Returns a sentence on a channel's power, or empty text. */
    String ofPower(int channel, String name, double powerWatts, double outputVoltsRms) {
        if (project.isEmpty() || reading.isEmpty() || level.isEmpty()) {
            return "";
        }
        Optional<LoadBranch> branch = project.get()
                .load(reading.get().loadId())
                .map(BenchLoad::branches)
                .filter(branches -> channel < branches.size())
                .map(branches -> branches.get(channel));
        SweepPoint point = level.get().points().get(name);
        if (branch.isEmpty() || point == null) {
            return "";
        }
        EndPointResult here = new EndPointResult(
                EndPointOutcome.REACHED,
                powerWatts,
                outputVoltsRms,
                point.thdFRatio(),
                point.supplyVolts(),
                OptionalDouble.empty(),
                0,
                0);
        try {
            PowerBudget budget =
                    PowerUncertainty.of(here, branch.get(), BudgetSetting.of(project.get(), reading.get()));
            return Texts.say(
                    "certainty.power",
                    Numbers.format("%.2g", Coverage.expanded(budget.combinedWatts())),
                    Coverage.wordsWithShare());
        } catch (EvaluationException e) {
            return e.getMessage();
        }
    }
}
