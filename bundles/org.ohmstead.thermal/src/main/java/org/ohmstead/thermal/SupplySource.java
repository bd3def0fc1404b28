// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyLimits;

/**
 * A supply or battery as volts behind a resistance. Of a battery that is not its chemistry: the volts at rest depend
 * on its charge, the resistance on charge, age and temperature, and both are to be measured when they matter ({@link
 * BatteryReading}).
 *
 * @param openVolts without a load, above 0
 * @param sourceOhms internal resistance, at least 0
 * @param limitAmps current at which it limits, above 0; empty when it does not, as a battery
 * @param battery whether it is a battery
 */
public record SupplySource(double openVolts, double sourceOhms, OptionalDouble limitAmps, boolean battery) {
    public SupplySource {
        Checks.positive(openVolts, "openVolts");
        Checks.notNegative(sourceOhms, "sourceOhms");
        Checks.present(limitAmps, "limitAmps").ifPresent(value -> Checks.positive(value, "limitAmps"));
    }

    /** Returns a battery with its volts at rest and its internal resistance in ohms. */
    public static SupplySource battery(double openVolts, double sourceOhms) {
        return new SupplySource(openVolts, sourceOhms, OptionalDouble.empty(), true);
    }

    /**
     * Returns the supply of a bench set to some volts. Its internal resistance is 0 where none is known; a battery
     * has no limit of current.
     *
     * @param supply the bench's supply
     * @param limits what else is known of it
     * @param setVolts without a load, above 0
     */
    public static SupplySource of(Supply supply, SupplyLimits limits, double setVolts) {
        Checks.present(supply, "supply");
        Checks.present(limits, "limits");
        OptionalDouble limit = limits.battery() ? OptionalDouble.empty() : OptionalDouble.of(supply.currentLimitAmps());
        return new SupplySource(setVolts, limits.sourceOhms().orElse(0), limit, limits.battery());
    }

    /** Returns what its terminals fall by with a current in amperes, at least 0: the sag in volts. */
    public double sagVolts(double amps) {
        return Checks.notNegative(amps, "amps") * sourceOhms;
    }
}
