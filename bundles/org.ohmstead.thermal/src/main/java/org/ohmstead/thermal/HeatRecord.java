// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A logged warm-up or cool-down of one place, with the powers that heated it.
 *
 * @param readings in order of time; time 0 is that at which the powers begin
 * @param powers what heated it, of one source; all zero for a cool-down
 * @param startsCold whether the place had the air's temperature at time 0
 * @param airCelsius temperature of the air in degrees Celsius, if it was measured; otherwise it is found too
 */
public record HeatRecord(
        List<HeatReading> readings, PowerProfile powers, boolean startsCold, OptionalDouble airCelsius) {
    public HeatRecord {
        readings = List.copyOf(readings);
        Checks.present(powers, "powers");
        if (powers.steps().get(0).shared().length != 1) {
            throw new IllegalArgumentException(
                    "powers has " + powers.steps().get(0).shared().length + " sources; a record has one");
        }
        Checks.present(airCelsius, "airCelsius").ifPresent(value -> Checks.finite(value, "airCelsius"));
    }

    /** Returns the record of a warm-up from the air's temperature by a constant power in watts; the air is found too. */
    public static HeatRecord warmUp(List<HeatReading> readings, double watts) {
        return new HeatRecord(
                readings, PowerProfile.constant(Checks.positive(watts, "watts")), true, OptionalDouble.empty());
    }

    /** Returns the record of a cool-down without power; the air is found too. */
    public static HeatRecord coolDown(List<HeatReading> readings) {
        return new HeatRecord(readings, PowerProfile.constant(0), false, OptionalDouble.empty());
    }
}
