// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * How warm a cable gets in the end: settled, or no answer because it would never settle below what any insulation
 * bears.
 */
public sealed interface CableHeating permits CableHeating.Settled, SupplyNoSolution {
    /**
     * The cable once it gets no warmer.
     *
     * @param conductorCelsius temperature of the wire
     * @param surfaceCelsius temperature of the insulation's surface
     * @param loopOhms resistance there and back at that temperature
     * @param dropVolts lost there and back
     * @param lossWatts turned into heat there and back
     */
    record Settled(double conductorCelsius, double surfaceCelsius, double loopOhms, double dropVolts, double lossWatts)
            implements CableHeating {
        public Settled {
            Checks.finite(conductorCelsius, "conductorCelsius");
            Checks.finite(surfaceCelsius, "surfaceCelsius");
            Checks.notNegative(loopOhms, "loopOhms");
            Checks.notNegative(dropVolts, "dropVolts");
            Checks.notNegative(lossWatts, "lossWatts");
        }
    }
}
