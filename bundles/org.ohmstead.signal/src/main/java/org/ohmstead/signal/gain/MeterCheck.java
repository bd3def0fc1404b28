// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import org.ohmstead.units.Decibels;

/**
 * What to feed and what to read at a level that lies below the end point, so that a set-up is done at low power.
 *
 * @param relativeDb the level relative to the end point in dB, at most 0
 * @param sourceLevelDbfs what the source plays, in dB relative to its full scale
 * @param sourceVoltsRms what that is at the amplifier's input, above 0
 * @param outputVoltsRms the meter reading to look for at the load, above 0
 * @param powerWatts in the load meanwhile, above 0
 */
public record MeterCheck(
        double relativeDb, double sourceLevelDbfs, double sourceVoltsRms, double outputVoltsRms, double powerWatts) {
    /** Checks that volts and power are finite and above 0, and levels finite. */
    public MeterCheck {
        Checks.finite(relativeDb, "relativeDb");
        Checks.finite(sourceLevelDbfs, "sourceLevelDbfs");
        Checks.positive(sourceVoltsRms, "sourceVoltsRms");
        Checks.positive(outputVoltsRms, "outputVoltsRms");
        Checks.positive(powerWatts, "powerWatts");
    }

    /** Returns whether the source can play that level: whether it does not lie above full scale. */
    public boolean playable() {
        return sourceLevelDbfs <= 0;
    }

    /**
     * Returns by how many dB the gain must be changed when the meter reads something else; below 0 to turn it down.
     *
     * @param readVoltsRms what the meter reads, above 0
     */
    public double gainChangeDb(double readVoltsRms) {
        return Decibels.ofFieldRatio(outputVoltsRms / Checks.positive(readVoltsRms, "readVoltsRms"));
    }
}
