// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.OptionalDouble;

/**
 * The surroundings of a reading.
 *
 * @param ambientCelsius air temperature, when it was read
 * @param caseCelsius temperature of the amplifier's case or sink at the last level, when it was read
 */
public record Conditions(OptionalDouble ambientCelsius, OptionalDouble caseCelsius) {
    public Conditions {
        ambientCelsius.ifPresent(value -> Checks.finite(value, "ambientCelsius"));
        caseCelsius.ifPresent(value -> Checks.finite(value, "caseCelsius"));
    }
}
