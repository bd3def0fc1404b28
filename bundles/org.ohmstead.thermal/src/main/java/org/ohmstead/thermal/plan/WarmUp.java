// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.text.Messages;

/**
 * The preconditioning of 16 CFR 432.3(c): all channels at one eighth of rated power with a sine of 1 kHz for an hour.
 */
final class WarmUp {
    private static final Messages TEXTS = Messages.of(WarmUp.class);

    /** Returns where the warm-up comes from. */
    static String note() {
        return TEXTS.text("warmUp.note");
    }

    private static final double SECONDS = 3600;
    private static final double FREQUENCY_HZ = 1000;
    private static final double PART = 8;
    private static final double SAME_RATIO = 0.05;

    private WarmUp() {}

    /** Returns the warm-up; empty when no continuous stereo rating has a load on the bench. */
    static Optional<PlannedStep> of(Project project) {
        List<Rating> ratings = project.amplifier().ratings().stream()
                .filter(rating -> rating.mode() == Mode.STEREO && rating.kind() == PowerKind.CONTINUOUS)
                .sorted(Comparator.comparingDouble(Rating::supplyVolts)
                        .thenComparingDouble(Rating::loadOhms)
                        .reversed())
                .toList();
        // The load of the first step needs no strapping after the warm-up; otherwise the highest volts and ohms are
        // taken.
        for (Step step : project.plan()) {
            for (Rating rating : ratings) {
                Optional<BenchLoad> load = project.load(step.loadId()).filter(each -> fits(each, rating));
                if (load.isPresent()) {
                    return Optional.of(planned(step, rating, load.get()));
                }
            }
        }
        return Optional.empty();
    }

    private static boolean fits(BenchLoad load, Rating rating) {
        return Math.abs(load.nominalOhms() - rating.loadOhms()) < SAME_RATIO * rating.loadOhms();
    }

    private static PlannedStep planned(Step pattern, Rating rating, BenchLoad load) {
        Step step = pattern.withId(PlanForecast.WARM_UP)
                .withMode(Mode.STEREO)
                .withLoadId(load.id())
                .withSupplyVolts(rating.supplyVolts())
                .withStimulus(new Stimulus.ContinuousSine(FREQUENCY_HZ));
        KnownPower power = new KnownPower(rating.powerWatts() / PART, OptionalDouble.empty());
        return new PlannedStep(step, load, Optional.of(power), "$.heat.pacing.warmUp", SECONDS);
    }
}
