// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** The temperature that the words about loads reckon with. */
final class AmbientOption {
    @Option(
            names = "--ambient-celsius",
            paramLabel = "T",
            defaultValue = "25",
            descriptionKey = "ambient.ambient-celsius")
    private String ambientCelsius;

    /** Returns it in degrees Celsius. */
    double celsius() throws InputException {
        return Quantities.any(ambientCelsius, Unit.CELSIUS, "--ambient-celsius");
    }
}
