// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.util.OptionalDouble;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Observation;

/** The abilities that are meters. */
public final class Meters {
    private Meters() {}

    public static boolean isMeter(Ability ability) {
        return switch (ability) {
            case SUPPLY_VOLTS, SUPPLY_AMPS, CASE_CELSIUS, AMBIENT_CELSIUS -> true;
            default -> false;
        };
    }

    /** Returns what a meter shows; empty for an ability that is none. */
    public static OptionalDouble shown(Observation observation, Ability ability) {
        return switch (ability) {
            case SUPPLY_VOLTS -> observation.supplyVolts();
            case SUPPLY_AMPS -> observation.supplyAmps();
            case CASE_CELSIUS -> observation.caseCelsius();
            case AMBIENT_CELSIUS -> observation.ambientCelsius();
            default -> OptionalDouble.empty();
        };
    }
}
