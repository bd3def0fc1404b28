// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * Dry air at sea level, by the formulas of the U.S. Standard Atmosphere 1976 for viscosity and thermal conductivity and the gas law.
 *
 * @param kelvin its temperature, 150 to 1000 K
 */
record AirProperties(double kelvin) {
    private static final double PASCAL = 101_325;
    private static final double GAS_CONSTANT = 287.05287;
    private static final double HEAT_CAPACITY = 1006;
    private static final double COOLEST = 150;
    private static final double HOTTEST = 1000;

    AirProperties {
        Checks.within(kelvin, COOLEST, HOTTEST, "kelvin");
    }

    /** Returns W/(m K). */
    double conductivity() {
        return 2.64638e-3 * Math.pow(kelvin, 1.5) / (kelvin + 245.4 * Math.pow(10, -12 / kelvin));
    }

    /** Returns m²/s. */
    double kinematicViscosity() {
        return dynamicViscosity() / density();
    }

    /** Returns Pr, about 0.7. */
    double prandtl() {
        return dynamicViscosity() * HEAT_CAPACITY / conductivity();
    }

    private double dynamicViscosity() {
        return 1.458e-6 * Math.pow(kelvin, 1.5) / (kelvin + 110.4);
    }

    private double density() {
        return PASCAL / GAS_CONSTANT / kelvin;
    }
}
