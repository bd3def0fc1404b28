// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Step;
import org.ohmstead.model.SupplyType;
import org.ohmstead.units.text.Messages;

/**
 * How much output power to expect of a step, and why.
 *
 * @param watts of each channel in stereo, in the load otherwise, during the burst where the stimulus is one; empty when
 *     nothing tells
 * @param basis what it comes from
 * @param sentence the same for people; says what was assumed
 */
public record ExpectedPower(OptionalDouble watts, Basis basis, String sentence) {
    private static final Messages TEXTS = Messages.of(ExpectedPower.class);

    /** What a power comes from, best first. */
    public enum Basis {
        /** Readings, as the caller says. */
        READING,
        /** A rating of the same load. */
        RATING,
        /** A rating of the same load for other supply volts, by the square of the volts. */
        SCALED,
        /** A rating of another load, by the same output volts. */
        OTHER_LOAD,
        /** Nothing tells. */
        UNKNOWN
    }

    private static final double SAME_RATIO = 0.05;
    private static final double SAME_VOLTS_RATIO = 0.005;

    public ExpectedPower {
        Require.present(watts, "watts").ifPresent(value -> Require.positive(value, "watts"));
        Require.present(basis, "basis");
        Require.named(sentence, "sentence");
    }

    /**
     * Returns the power to expect of a step.
     *
     * <p>Without a reading it is that of the maker's rating of the same load, the one for the nearest supply volts
     * where several tell, raised or lowered with the square of the supply volts unless a converter holds the rails. A
     * bridged amplifier is taken as two channels that each see half of the load. Without a rating of the load it is
     * that of the rating of the next higher load with the same output volts, which is more than an amplifier whose
     * volts give way delivers; without that of the next lower load, which may be somewhat too little.
     *
     * @param project the test
     * @param step its step; its load has to exist
     * @param known from readings; empty when there are none
     */
    public static ExpectedPower of(Project project, Step step, Optional<KnownPower> known) {
        if (known.isPresent()) {
            return new ExpectedPower(
                    OptionalDouble.of(known.get().outputWatts()),
                    Basis.READING,
                    TEXTS.text("power.readings", step.id()));
        }
        double nominal = project.load(step.loadId()).orElseThrow().nominalOhms();
        double ohms = step.mode() == Mode.BRIDGED ? nominal / 2 : nominal;
        List<Rating> ratings = project.amplifier().ratings();
        List<Rating> same = ratings.stream()
                .filter(rating -> Math.abs(channelOhms(rating) - ohms) < SAME_RATIO * ohms)
                .toList();
        if (!same.isEmpty()) {
            return ofSameLoad(project, step, same);
        }
        Optional<Rating> higher = ratings.stream()
                .filter(rating -> channelOhms(rating) > ohms)
                .min(Comparator.comparingDouble(ExpectedPower::channelOhms).thenComparing(nearestVolts(step)));
        Optional<Rating> other = higher.isPresent()
                ? higher
                : ratings.stream()
                        .min(Comparator.comparingDouble(ExpectedPower::channelOhms)
                                .reversed()
                                .thenComparing(nearestVolts(step)));
        return other.map(rating -> ofOtherLoad(project, step, rating, ohms, higher.isPresent()))
                .orElseGet(() -> new ExpectedPower(
                        OptionalDouble.empty(), Basis.UNKNOWN, TEXTS.text("power.unknown", step.id())));
    }

    private static ExpectedPower ofSameLoad(Project project, Step step, List<Rating> same) {
        PowerKind kind = step.stimulus().powerKind();
        boolean sameMode = same.stream().anyMatch(rating -> rating.mode() == step.mode());
        List<Rating> ofMode = same.stream()
                .filter(rating -> !sameMode || rating.mode() == step.mode())
                .toList();
        boolean sameKind = ofMode.stream().anyMatch(rating -> rating.kind() == kind);
        Rating best = ofMode.stream()
                .filter(rating -> !sameKind || rating.kind() == kind)
                .min(nearestVolts(step)
                        .thenComparing(
                                Comparator.comparingDouble((Rating rating) -> channelWatts(project, step, rating))
                                        .reversed()))
                .orElseThrow();
        boolean scaled = !held(project)
                && Math.abs(step.supplyVolts() - best.supplyVolts()) > SAME_VOLTS_RATIO * best.supplyVolts();
        String key = "power.rating" + (sameMode ? "" : ".mode") + (scaled ? ".scaled" : "");
        return new ExpectedPower(
                OptionalDouble.of(forStep(step, channelWatts(project, step, best))),
                scaled || !sameMode ? Basis.SCALED : Basis.RATING,
                TEXTS.text(key, step.id(), best.id()));
    }

    private static ExpectedPower ofOtherLoad(Project project, Step step, Rating rating, double ohms, boolean cautious) {
        double watts = channelWatts(project, step, rating) * channelOhms(rating) / ohms;
        return new ExpectedPower(
                OptionalDouble.of(forStep(step, watts)),
                Basis.OTHER_LOAD,
                TEXTS.text(cautious ? "power.other.much" : "power.other.little", step.id(), rating.id()));
    }

    private static Comparator<Rating> nearestVolts(Step step) {
        return Comparator.comparingDouble(rating -> Math.abs(Math.log(rating.supplyVolts() / step.supplyVolts())));
    }

    /** Returns the load that each channel sees. */
    private static double channelOhms(Rating rating) {
        return rating.mode() == Mode.BRIDGED ? rating.loadOhms() / 2 : rating.loadOhms();
    }

    private static double channelWatts(Project project, Step step, Rating rating) {
        double ratio = held(project) ? 1 : step.supplyVolts() / rating.supplyVolts();
        return (rating.mode() == Mode.BRIDGED ? rating.powerWatts() / 2 : rating.powerWatts()) * ratio * ratio;
    }

    private static double forStep(Step step, double channelWatts) {
        return step.mode() == Mode.BRIDGED ? 2 * channelWatts : channelWatts;
    }

    private static boolean held(Project project) {
        return project.amplifier().supplyType() == SupplyType.REGULATED;
    }
}
