// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/** How an amplifier draws from its supply. */
public sealed interface SupplyDemand {
    /**
     * So much power, whatever the volts: what a converter with held rails takes, which draws more current when the
     * volts fall.
     *
     * @param watts at the amplifier's terminals, at least 0
     */
    record ConstantPower(double watts) implements SupplyDemand {
        public ConstantPower {
            Checks.notNegative(watts, "watts");
        }
    }

    /**
     * So much current, whatever the volts: what an output stage at a fixed level takes when its rails follow the
     * supply.
     *
     * @param amps average in amperes, at least 0
     */
    record ConstantCurrent(double amps) implements SupplyDemand {
        public ConstantCurrent {
            Checks.notNegative(amps, "amps");
        }
    }

    /**
     * A current that grows with the volts: I = (V - offset) / ohms. An ideal class-AB bridge that is driven to its
     * limit is one, with {@code ohms} pi / 2 times its load and {@code offsetVolts} what its transistors keep, since
     * its average current is 2 V_pk / (pi R).
     *
     * @param ohms above 0
     * @param offsetVolts below which nothing flows, at least 0
     */
    record Stage(double ohms, double offsetVolts) implements SupplyDemand {
        public Stage {
            Checks.positive(ohms, "ohms");
            Checks.notNegative(offsetVolts, "offsetVolts");
        }
    }
}
