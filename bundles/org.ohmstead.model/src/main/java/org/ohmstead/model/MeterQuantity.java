// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** What a meter reads. */
public enum MeterQuantity {
    /** Alternating output volts, also those of a recorded capture. */
    OUTPUT_VOLTS,
    /** Direct supply volts at the amplifier's terminals. */
    SUPPLY_VOLTS,
    /** Direct supply current. */
    SUPPLY_AMPS,
    /** Resistance of loads. */
    LOAD_OHMS,
    /** Temperatures. */
    TEMPERATURE_CELSIUS
}
