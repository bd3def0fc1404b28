// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import org.ohmstead.units.text.Messages;

/**
 * What two readings tell of a battery: its volts at rest and under a load. The difference over the current is its
 * internal resistance of that moment; a rested, warm, full battery has less of it than a cold or empty one.
 *
 * @param openVolts without a load, above 0
 * @param loadedVolts with it, above 0 and below {@code openVolts}
 * @param loadAmps current of the load in amperes, above 0
 */
public record BatteryReading(double openVolts, double loadedVolts, double loadAmps) {
    private static final Messages TEXTS = Messages.of(BatteryReading.class);

    /** What to show beside every forecast with a battery. */
    public static String note() {
        return TEXTS.text("battery.note");
    }

    public BatteryReading {
        Checks.positive(openVolts, "openVolts");
        Checks.positive(loadedVolts, "loadedVolts");
        Checks.positive(loadAmps, "loadAmps");
        if (loadedVolts >= openVolts) {
            throw new IllegalArgumentException(
                    "loadedVolts is " + loadedVolts + "; it must be below openVolts, which is " + openVolts
                            + ": a battery under load reads less than one at rest");
        }
    }

    /** Returns the internal resistance in ohms: (open - loaded) / current. */
    public double internalOhms() {
        return (openVolts - loadedVolts) / loadAmps;
    }

    /** Returns the battery that the readings tell of. */
    public SupplySource source() {
        return SupplySource.battery(openVolts, internalOhms());
    }
}
