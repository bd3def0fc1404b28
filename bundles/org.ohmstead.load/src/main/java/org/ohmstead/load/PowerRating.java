// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

/**
 * The power that a resistor takes for as long as one likes, and where that ends.
 *
 * @param ratedWatts rated power in watts, above 0
 * @param ratedToCelsius temperature up to which the rated power holds
 * @param zeroPowerCelsius temperature at which the power allowed has fallen to zero, above {@code ratedToCelsius}
 */
public record PowerRating(double ratedWatts, double ratedToCelsius, double zeroPowerCelsius) {
    public PowerRating {
        Checks.positive(ratedWatts, "ratedWatts");
        Checks.finite(ratedToCelsius, "ratedToCelsius");
        Checks.finite(zeroPowerCelsius, "zeroPowerCelsius");
        if (zeroPowerCelsius <= ratedToCelsius) {
            throw new IllegalArgumentException("zeroPowerCelsius is " + zeroPowerCelsius
                    + "; it must be above ratedToCelsius, which is " + ratedToCelsius);
        }
    }
}
