// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.thermal.plan.ExpectedPower;
import org.ohmstead.thermal.plan.KnownPower;
import org.ohmstead.units.text.Messages;

/**
 * What a step of the plan gives the calculator to begin with.
 *
 * @param step of the plan
 * @param loadOhms of the load, when the project has it
 * @param powerWatts in each load, from the latest reading or from a rating; empty when there is neither
 * @param measuredInputWatts from the latest reading of a steady tone, when the current was read
 * @param origin where the power comes from, a sentence
 */
record StepStart(
        Step step,
        OptionalDouble loadOhms,
        OptionalDouble powerWatts,
        OptionalDouble measuredInputWatts,
        String origin) {
    private static final Messages TEXTS = Messages.of(StepStart.class);
    private static final MathContext ENTERED = new MathContext(4);

    /**
     * Returns the start from a step.
     *
     * @param project that the step is of
     * @param readings that count, oldest first
     */
    static StepStart of(Project project, Step step, List<Reading> readings) {
        Optional<BenchLoad> load = project.load(step.loadId());
        if (load.isEmpty()) {
            return new StepStart(
                    step,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    TEXTS.text("start.noLoad", step.loadId()));
        }
        Optional<KnownPower> known = readings.stream()
                .filter(reading -> reading.stepId().equals(step.id()))
                .reduce((first, second) -> second)
                .flatMap(StepStart::known);
        ExpectedPower expected = ExpectedPower.of(project, step, known);
        return new StepStart(
                step,
                OptionalDouble.of(rounded(lowestOhms(project, step, load.get()))),
                expected.watts().isPresent()
                        ? OptionalDouble.of(rounded(expected.watts().getAsDouble()))
                        : OptionalDouble.empty(),
                known.map(KnownPower::inputWatts)
                        .filter(OptionalDouble::isPresent)
                        .map(watts -> OptionalDouble.of(rounded(watts.getAsDouble())))
                        .orElse(OptionalDouble.empty()),
                expected.sentence());
    }

    private static double rounded(double value) {
        return new BigDecimal(value, ENTERED).doubleValue();
    }

    private static double lowestOhms(Project project, Step step, BenchLoad load) {
        int outputs = step.mode() == Mode.STEREO ? project.amplifier().channelCount() : 1;
        return load.branches().stream()
                .limit(outputs)
                .mapToDouble(LoadBranch::ohms)
                .min()
                .orElse(load.nominalOhms());
    }

    private static Optional<KnownPower> known(Reading reading) {
        List<ChannelReading> channels = reading.channels();
        double output = channels.stream()
                .mapToDouble(ChannelReading::powerWatts)
                .average()
                .orElse(0);
        // During a burst the current that was read need not be that of the whole period.
        boolean whole = reading.stimulus().powerKind() == PowerKind.CONTINUOUS
                && channels.stream().allMatch(channel -> channel.supplyAmps().orElse(0) > 0);
        OptionalDouble input = whole
                ? channels.stream()
                        .mapToDouble(channel ->
                                channel.supplyVolts() * channel.supplyAmps().orElseThrow())
                        .average()
                : OptionalDouble.empty();
        return output > 0 ? Optional.of(new KnownPower(output, input)) : Optional.empty();
    }

    static String words(Mode mode) {
        return TEXTS.text("mode." + mode.name());
    }
}
