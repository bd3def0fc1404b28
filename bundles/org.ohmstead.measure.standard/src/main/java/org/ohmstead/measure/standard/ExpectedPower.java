// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SupplyType;

/** What the maker's ratings let expect of a step. */
final class ExpectedPower {
    private static final double SAME_LOAD_RATIO = 0.05;
    private static final double SAME_SUPPLY_VOLTS = 0.15;

    private ExpectedPower() {}

    /** Returns the continuous rating for a step's mode and load, the one at the nearest supply volts first. */
    static Optional<Rating> rating(Subject subject) {
        double nominal = subject.load().nominalOhms();
        return subject.project().amplifier().ratings().stream()
                .filter(rating -> rating.kind() == PowerKind.CONTINUOUS)
                .filter(rating -> rating.mode() == subject.step().mode())
                .filter(rating -> Math.abs(rating.loadOhms() - nominal) <= SAME_LOAD_RATIO * nominal)
                .min(Comparator.comparingDouble(
                        rating -> Math.abs(rating.supplyVolts() - subject.step().supplyVolts())));
    }

    /** Returns the rating only when it is stated for the step's supply volts, too. */
    static Optional<Rating> ratingAtSupply(Subject subject) {
        return rating(subject)
                .filter(rating -> Math.abs(rating.supplyVolts() - subject.step().supplyVolts()) <= SAME_SUPPLY_VOLTS);
    }

    /** Returns about what power to expect in watts: rails that follow the supply make power go with its square. */
    static OptionalDouble watts(Subject subject) {
        boolean held = subject.project().amplifier().supplyType() == SupplyType.REGULATED;
        return rating(subject)
                .map(rating -> rating.powerWatts()
                        * (held ? 1 : Math.pow(subject.step().supplyVolts() / rating.supplyVolts(), 2)))
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    }
}
