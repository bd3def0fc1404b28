// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

/** The units that the bench works in. Each is an SI unit or one in use beside them; prefixes are a matter of text. */
public enum Unit {
    VOLT("V", true),
    AMPERE("A", true),
    OHM("\u03a9", true),
    WATT("W", true),
    HERTZ("Hz", true),
    SECOND("s", true),
    HENRY("H", true),
    FARAD("F", true),
    JOULE("J", true),
    METRE("m", true),
    CELSIUS("\u00b0C", false),
    KELVIN("K", false),
    KELVIN_PER_WATT("K/W", false),
    DECIBEL("dB", false),
    PERCENT("%", false),
    NONE("", false);

    private final String symbol;
    private final boolean takesPrefix;

    Unit(String symbol, boolean takesPrefix) {
        this.symbol = symbol;
        this.takesPrefix = takesPrefix;
    }

    /** Returns the symbol as printed, for example "Ω"; empty for a plain number. */
    public String symbol() {
        return symbol;
    }

    /** Returns whether SI prefixes such as k and m are used with this unit. */
    public boolean takesPrefix() {
        return takesPrefix;
    }
}
