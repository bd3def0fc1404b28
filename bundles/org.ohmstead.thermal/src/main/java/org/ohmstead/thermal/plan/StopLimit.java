// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

/**
 * When to stop a run by hand or by a watching instrument.
 *
 * @param quantity what is watched
 * @param placeId id of the point of the model; "supply" for the current
 * @param name what a person calls the place, such as "case of the amplifier"
 * @param limit the value above which to stop
 * @param why what is in danger there, a whole sentence
 */
public record StopLimit(Quantity quantity, String placeId, String name, double limit, String why) {
    /** What is watched. */
    public enum Quantity {
        /** A temperature in degrees Celsius. */
        CELSIUS,
        /** The average current from the supply in amperes. */
        SUPPLY_AMPS
    }

    public StopLimit {
        Require.present(quantity, "quantity");
        Require.named(placeId, "placeId");
        Require.named(name, "name");
        Require.finite(limit, "limit");
        Require.named(why, "why");
    }
}
