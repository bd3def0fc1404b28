// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * One reading of a thermometer.
 *
 * @param seconds when, from the start of the record
 * @param celsius what it showed, in degrees Celsius
 */
public record HeatReading(double seconds, double celsius) {
    public HeatReading {
        Checks.notNegative(seconds, "seconds");
        Checks.finite(celsius, "celsius");
    }
}
