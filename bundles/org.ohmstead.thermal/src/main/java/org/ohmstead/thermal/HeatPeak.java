// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * The hottest that a point gets while the powers do not change.
 *
 * @param riseKelvin its temperature above that of the air, in kelvins
 * @param afterSeconds when, from the start of the interval, in seconds
 */
public record HeatPeak(double riseKelvin, double afterSeconds) {
    public HeatPeak {
        Checks.finite(riseKelvin, "riseKelvin");
        Checks.notNegative(afterSeconds, "afterSeconds");
    }
}
