// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** What the amplifier's internal converter does with the supply volts. */
public enum SupplyType {
    /** The internal rails follow the supply: power depends on it. */
    UNREGULATED,
    /** The internal rails are held by the converter above some supply voltage. */
    REGULATED,
    /** No converter: the output stage runs from the supply itself. */
    DIRECT,
    /** Not stated by the maker and not yet known. */
    UNKNOWN
}
