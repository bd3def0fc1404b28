// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * The temperature of a point at one time, with what is unknown carried through.
 *
 * @param seconds when
 * @param lowCelsius the least that it may be
 * @param middleCelsius what the middles of all ranges give
 * @param highCelsius the most that it may be
 */
public record HeatBandPoint(double seconds, double lowCelsius, double middleCelsius, double highCelsius) {
    public HeatBandPoint {
        Checks.finite(seconds, "seconds");
        Checks.finite(lowCelsius, "lowCelsius");
        Checks.finite(middleCelsius, "middleCelsius");
        Checks.finite(highCelsius, "highCelsius");
    }
}
