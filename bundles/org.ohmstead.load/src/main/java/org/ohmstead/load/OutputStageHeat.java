// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

/**
 * What an ideal class-B output stage on two rails turns into heat with a sine, by the phase of its load: P = 2 m V^2 / (pi |Z|) - m^2 V^2 cos
 * phi / (2 |Z|), m being the output's peak over the rail.
 */
public final class OutputStageHeat {
    private OutputStageHeat() {}

    /**
     * Returns the heat in watts.
     *
     * @param railVolts each rail's volts to ground, above 0
     * @param peakRatio the output's peak over the rail, 0 to 1
     * @param load the load at the frequency of the sine, with at least 0 ohm of resistance
     */
    public static double watts(double railVolts, double peakRatio, Impedance load) {
        Checks.positive(railVolts, "railVolts");
        Checks.within(peakRatio, 0, 1, "peakRatio");
        double magnitude = Checks.positive(load.magnitudeOhms(), "load's magnitudeOhms");
        double cosine = Checks.notNegative(load.resistanceOhms(), "load's resistanceOhms") / magnitude;
        double squared = railVolts * railVolts / magnitude;
        return 2 * peakRatio * squared / Math.PI - peakRatio * peakRatio * squared * cosine / 2;
    }

    /** Returns the peak over the rail at which the heat is greatest: 2 / (pi cos phi), at most 1. */
    public static double worstPeakRatio(Impedance load) {
        double cosine = Checks.notNegative(load.resistanceOhms(), "load's resistanceOhms")
                / Checks.positive(load.magnitudeOhms(), "load's magnitudeOhms");
        return Math.min(1, 2 / (Math.PI * cosine));
    }
}
