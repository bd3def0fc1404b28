// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * A bound that ends a step while it runs.
 *
 * @param quantity what is watched
 * @param highest the most that is allowed, in the quantity's unit
 * @param reason why, a whole sentence
 */
public record StopLimit(Quantity quantity, double highest, String reason) {
    /** What can be watched while a step runs. */
    public enum Quantity {
        /** Supply current in amperes. */
        SUPPLY_AMPS,
        /** Temperature of the amplifier's case in degrees Celsius. */
        CASE_CELSIUS,
        /** Output power into one load in watts. */
        OUTPUT_WATTS
    }

    public StopLimit {
        Checks.present(quantity, "quantity");
        Checks.finite(highest, "highest");
        Checks.named(reason, "reason");
    }
}
