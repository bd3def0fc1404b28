// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** The temperature of the air that the words about heat reckon with. */
final class ThermalAirOption {
    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 120;

    @Option(
            names = "--ambient-celsius",
            paramLabel = "T",
            defaultValue = "25",
            descriptionKey = "thermal.air.ambient-celsius")
    private String ambientCelsius;

    /** Returns it in degrees Celsius. */
    double celsius() throws InputException {
        return Quantities.within(ambientCelsius, Unit.CELSIUS, COLDEST_CELSIUS, HOTTEST_CELSIUS, "--ambient-celsius");
    }
}
