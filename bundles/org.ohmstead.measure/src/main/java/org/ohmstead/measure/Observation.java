// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.time.Instant;
import java.util.OptionalDouble;

/**
 * What a bench's meters show at a moment. What no meter shows is empty.
 *
 * @param at when
 * @param supplyVolts direct volts at the amplifier's terminals
 * @param supplyAmps supply current in amperes
 * @param caseCelsius temperature of the amplifier's case
 * @param ambientCelsius temperature of the air
 */
public record Observation(
        Instant at,
        OptionalDouble supplyVolts,
        OptionalDouble supplyAmps,
        OptionalDouble caseCelsius,
        OptionalDouble ambientCelsius) {
    public Observation {
        Checks.present(at, "at");
        Checks.present(supplyVolts, "supplyVolts").ifPresent(value -> Checks.finite(value, "supplyVolts"));
        Checks.present(supplyAmps, "supplyAmps").ifPresent(value -> Checks.finite(value, "supplyAmps"));
        Checks.present(caseCelsius, "caseCelsius").ifPresent(value -> Checks.finite(value, "caseCelsius"));
        Checks.present(ambientCelsius, "ambientCelsius").ifPresent(value -> Checks.finite(value, "ambientCelsius"));
    }
}
