// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import org.ohmstead.units.Decibels;

/**
 * Volts as levels and back. dBFS count from a sine whose peaks just reach full scale (as in AES17 and IEC 61606), dBV from 1 V and dBu
 * from the square root of 0.6 V, which is 1 mW in 600 Ω.
 */
public final class SourceLevels {
    /** The volts RMS of 0 dBu: 0.7745967 V. */
    public static final double DBU_VOLTS_RMS = Math.sqrt(0.6);

    private SourceLevels() {}

    /**
     * Returns the volts RMS of a sine at a level below or above full scale.
     *
     * @param levelDbfs in dB relative to full scale, finite
     * @param fullScaleVoltsRms of a sine at full scale, above 0
     */
    public static double voltsAt(double levelDbfs, double fullScaleVoltsRms) {
        return Checks.positive(fullScaleVoltsRms, "fullScaleVoltsRms") * Decibels.toFieldRatio(levelDbfs);
    }

    /**
     * Returns the level in dB relative to full scale that a sine has.
     *
     * @param voltsRms of the sine, above 0
     * @param fullScaleVoltsRms of a sine at full scale, above 0
     */
    public static double dbfs(double voltsRms, double fullScaleVoltsRms) {
        Checks.positive(fullScaleVoltsRms, "fullScaleVoltsRms");
        return Decibels.ofFieldRatio(Checks.positive(voltsRms, "voltsRms") / fullScaleVoltsRms);
    }

    /** Returns the level in dBu of volts RMS above 0. */
    public static double dbu(double voltsRms) {
        return Decibels.ofFieldRatio(Checks.positive(voltsRms, "voltsRms") / DBU_VOLTS_RMS);
    }

    /** Returns the level in dBV of volts RMS above 0. */
    public static double dbv(double voltsRms) {
        return Decibels.ofFieldRatio(Checks.positive(voltsRms, "voltsRms"));
    }

    /** Returns the volts RMS of a level in dBu. */
    public static double voltsOfDbu(double levelDbu) {
        return DBU_VOLTS_RMS * Decibels.toFieldRatio(levelDbu);
    }

    /** Returns the volts RMS of a level in dBV. */
    public static double voltsOfDbv(double levelDbv) {
        return Decibels.toFieldRatio(levelDbv);
    }
}
