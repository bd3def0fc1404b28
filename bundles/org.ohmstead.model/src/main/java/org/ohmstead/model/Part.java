// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * A resistor of the bench's stock.
 *
 * @param id short name, unique among the parts
 * @param ohms measured or nominal resistance in ohms, above 0
 * @param toleranceRatio 0 to 1: 0.05 is 5 %
 * @param ratedWatts rated power in watts, above 0
 * @param ratedToCelsius temperature up to which the rated power holds
 * @param zeroPowerCelsius temperature at which the power allowed has fallen to zero, above {@code ratedToCelsius}
 * @param mounting how it gets rid of its heat
 * @param count how many there are, at least 1
 */
public record Part(
        String id,
        double ohms,
        double toleranceRatio,
        double ratedWatts,
        double ratedToCelsius,
        double zeroPowerCelsius,
        Mounting mounting,
        int count) {
    public Part {
        Checks.named(id, "part id");
        Checks.positive(ohms, "ohms");
        Checks.within(toleranceRatio, 0, 1, "toleranceRatio");
        Checks.positive(ratedWatts, "ratedWatts");
        Checks.finite(ratedToCelsius, "ratedToCelsius");
        Checks.finite(zeroPowerCelsius, "zeroPowerCelsius");
        if (zeroPowerCelsius <= ratedToCelsius) {
            throw new IllegalArgumentException("zeroPowerCelsius is " + zeroPowerCelsius
                    + "; it must be above ratedToCelsius, which is " + ratedToCelsius);
        }
        Checks.present(mounting, "mounting");
        Checks.within(count, 1, 10_000, "count");
    }
}
