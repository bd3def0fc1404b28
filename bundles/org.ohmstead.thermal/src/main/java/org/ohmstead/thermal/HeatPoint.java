// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;

/**
 * A place whose temperature is watched.
 *
 * @param id short name, unique within its model
 * @param name what a person calls it, such as "case of the amplifier"
 * @param limitCelsius the hottest that it may get, in degrees Celsius; empty when there is no limit
 */
public record HeatPoint(String id, String name, OptionalDouble limitCelsius) {
    public HeatPoint {
        Checks.named(id, "id");
        Checks.named(name, "name");
        Checks.present(limitCelsius, "limitCelsius").ifPresent(value -> Checks.finite(value, "limitCelsius"));
    }

    HeatPoint lowered(double kelvin) {
        return limitCelsius.isEmpty()
                ? this
                : new HeatPoint(id, name, OptionalDouble.of(limitCelsius.getAsDouble() - kelvin));
    }
}
