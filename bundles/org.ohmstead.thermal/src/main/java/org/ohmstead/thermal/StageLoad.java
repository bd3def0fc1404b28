// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * What hangs on an output stage.
 *
 * @param ohms magnitude of the impedance in ohms, above 0
 * @param phaseRadians angle by which the current lags or leads, less than a quarter turn either way; 0 for a resistor
 */
public record StageLoad(double ohms, double phaseRadians) {
    public StageLoad {
        Checks.positive(ohms, "ohms");
        Checks.finite(phaseRadians, "phaseRadians");
        if (Math.abs(phaseRadians) >= Math.PI / 2) {
            throw new IllegalArgumentException(
                    "phaseRadians is " + phaseRadians + "; it must lie within a quarter turn, " + Math.PI / 2);
        }
    }

    /** Returns a resistor. */
    public static StageLoad resistor(double ohms) {
        return new StageLoad(ohms, 0);
    }

    /** Returns the power that it takes at some RMS volts, in watts. */
    public double watts(double voltsRms) {
        return voltsRms * voltsRms / ohms * Math.cos(phaseRadians);
    }

    /** Returns the RMS volts at which it takes a power. */
    public double voltsRms(double watts) {
        return Math.sqrt(Checks.notNegative(watts, "watts") * ohms / Math.cos(phaseRadians));
    }
}
