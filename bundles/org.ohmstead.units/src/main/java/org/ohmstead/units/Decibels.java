// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

/** Ratios as decibels and back. Power ratios use 10 log10, voltage ratios 20 log10 (IEC 60027-3). */
public final class Decibels {
    private Decibels() {}

    /** Returns 10 log10 of a power ratio above 0. */
    public static double ofPowerRatio(double ratio) {
        return 10 * Math.log10(positive(ratio));
    }

    /** Returns 20 log10 of a ratio of voltages, currents or pressures above 0. */
    public static double ofFieldRatio(double ratio) {
        return 20 * Math.log10(positive(ratio));
    }

    /** Returns the power ratio of a level difference in dB. */
    public static double toPowerRatio(double levelDb) {
        return Math.pow(10, levelDb / 10);
    }

    /** Returns the ratio of voltages of a level difference in dB. */
    public static double toFieldRatio(double levelDb) {
        return Math.pow(10, levelDb / 20);
    }

    private static double positive(double ratio) {
        if (!(ratio > 0) || Double.isInfinite(ratio)) {
            throw new IllegalArgumentException("ratio is " + ratio + "; it must be a finite number above 0");
        }
        return ratio;
    }
}
