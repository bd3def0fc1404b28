// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Mode;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SupplyType;
import org.ohmstead.thermal.Drive;
import org.ohmstead.thermal.HeatEstimate;
import org.ohmstead.thermal.StepDemand;
import org.ohmstead.thermal.StepHeat;
import org.ohmstead.units.text.Messages;

/**
 * Where the power of a step goes, with what is unknown as ranges.
 *
 * @param outputWatts into all loads, on average
 * @param loudOutputWatts the same in the loud part of a burst
 * @param heatWatts what turns into heat in the amplifier, on average
 * @param loudHeatWatts the same in the loud part of a burst
 * @param stageWatts heat of the output stages on average; empty when it cannot be told apart
 * @param loudStageWatts the same in the loud part of a burst
 * @param converterWatts heat of the converter on average; empty when it cannot be told apart
 * @param basis what the heat comes from, a few words
 * @param remarks what was assumed, in whole sentences
 */
record StepPower(
        double outputWatts,
        double loudOutputWatts,
        Range heatWatts,
        Range loudHeatWatts,
        Optional<Range> stageWatts,
        Optional<Range> loudStageWatts,
        Optional<Range> converterWatts,
        String basis,
        List<String> remarks) {
    private static final Messages TEXTS = Messages.of(StepPower.class);
    private static final double SAME_LOAD_RATIO = 0.1;

    /** Returns where the power goes. */
    static StepPower of(StepQuestion question, Optional<Project> project) {
        AmplifierHeat facts = project.map(open -> facts(open, question.supplyVolts()))
                .orElse(AmplifierHeat.NONE)
                .withOutputClass(question.outputClass());
        StepDemand demand = new StepDemand(
                question.drive(),
                question.load(),
                question.outputs(),
                question.mode() == Mode.BRIDGED,
                question.supplyVolts(),
                OptionalDouble.of(mostVoltsRms(question, project)),
                question.measuredInputWatts());
        HeatEstimate estimate = StepHeat.of(facts, demand);
        double loudOutput = loudOutput(question);
        boolean measured = estimate.basis() == HeatEstimate.Basis.MEASURED;
        if (!measured && question.efficiencyRatio().isPresent()) {
            return typed(
                    demand.outputWatts(), loudOutput, question.efficiencyRatio().get());
        }
        boolean apart = !measured && question.outputClass() == OutputClass.CLASS_AB;
        Optional<HeatEstimate> stage = apart ? Optional.of(StepHeat.of(bare(facts), demand)) : Optional.empty();
        Range idle = facts.idleWatts().orElse(Range.of(0));
        return new StepPower(
                estimate.outputWatts(),
                loudOutput,
                estimate.heatWatts(),
                estimate.loudHeatWatts(),
                stage.map(HeatEstimate::heatWatts),
                stage.map(HeatEstimate::loudHeatWatts),
                stage.map(part -> rest(estimate.heatWatts(), part.heatWatts(), idle)),
                words(estimate.basis()),
                estimate.remarks());
    }

    /** Returns what is known of the amplifier, with the rails at these supply volts where the type of its supply tells what they do. */
    private static AmplifierHeat facts(Project project, double supplyVolts) {
        AmplifierHeat facts = project.heat().amplifier();
        SupplyType type = project.amplifier().supplyType();
        if (facts.railVolts().isEmpty() || facts.railSupplyVolts().isEmpty() || type == SupplyType.UNKNOWN) {
            return facts;
        }
        double ratio = type == SupplyType.REGULATED
                ? 1
                : supplyVolts / facts.railSupplyVolts().getAsDouble();
        return facts.withRailVolts(OptionalDouble.of(ratio * facts.railVolts().getAsDouble()))
                .withRailSupplyVolts(OptionalDouble.of(supplyVolts));
    }

    /** Returns the facts of an amplifier whose output stages are all that gives off heat. */
    private static AmplifierHeat bare(AmplifierHeat facts) {
        return facts.withConverterEfficiencyRatio(Optional.of(Range.of(1))).withIdleWatts(Optional.of(Range.of(0)));
    }

    private static Range rest(Range all, Range stage, Range idle) {
        double low = Math.max(0, all.low() - stage.low() - idle.low());
        return new Range(low, Math.max(low, all.high() - stage.high() - idle.high()));
    }

    private static StepPower typed(double outputWatts, double loudOutputWatts, Range efficiency) {
        return new StepPower(
                outputWatts,
                loudOutputWatts,
                lost(outputWatts, efficiency),
                lost(loudOutputWatts, efficiency),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                TEXTS.text("power.typed"),
                List.of(TEXTS.text("power.typed.remark")));
    }

    private static Range lost(double outputWatts, Range efficiency) {
        return new Range(outputWatts * (1 / efficiency.high() - 1), outputWatts * (1 / efficiency.low() - 1));
    }

    private static double loudOutput(StepQuestion question) {
        double loudest = 0;
        for (Drive.Stretch stretch : question.drive().stretches()) {
            loudest = Math.max(loudest, question.load().watts(stretch.drive().outputVoltsRms()));
        }
        return question.outputs() * loudest;
    }

    /** Returns the most unclipped output that is known of: this one, or a rating's. */
    private static double mostVoltsRms(StepQuestion question, Optional<Project> project) {
        double most = question.load().voltsRms(question.powerWatts());
        List<Rating> ratings =
                new ArrayList<>(project.map(open -> open.amplifier().ratings()).orElse(List.of()));
        ratings.removeIf(rating -> rating.mode() != question.mode()
                || Math.abs(rating.loadOhms() / question.loadOhms() - 1) > SAME_LOAD_RATIO);
        for (Rating rating : ratings) {
            most = Math.max(most, question.load().voltsRms(rating.powerWatts()));
        }
        return Math.max(most, Double.MIN_NORMAL);
    }

    private static String words(HeatEstimate.Basis basis) {
        return TEXTS.text("power." + basis.name());
    }

    /** Returns what the amplifier takes from the supply on average, in watts. */
    Range inputWatts() {
        return plus(heatWatts, outputWatts);
    }

    /** Returns what it takes in the loud part, in watts. */
    Range loudInputWatts() {
        return plus(loudHeatWatts, loudOutputWatts);
    }

    private static Range plus(Range range, double more) {
        return new Range(range.low() + more, range.high() + more);
    }
}
