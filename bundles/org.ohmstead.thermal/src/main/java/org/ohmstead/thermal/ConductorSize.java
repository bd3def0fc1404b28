// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * A size of the standard's series with the highest resistance that its conductor may have (IEC 60228, plain copper,
 * 20 degrees Celsius).
 *
 * @param squareMillimetres nominal cross-section, above 0
 * @param strandedOhmsPerKilometre highest resistance of class 2, stranded for fixed laying, above 0
 * @param flexibleOhmsPerKilometre highest resistance of class 5, flexible, above 0
 */
public record ConductorSize(
        double squareMillimetres, double strandedOhmsPerKilometre, double flexibleOhmsPerKilometre) {
    public ConductorSize {
        Checks.positive(squareMillimetres, "squareMillimetres");
        Checks.positive(strandedOhmsPerKilometre, "strandedOhmsPerKilometre");
        Checks.positive(flexibleOhmsPerKilometre, "flexibleOhmsPerKilometre");
    }
}
