// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** The frequency weightings of IEC 61672-1 in their closed form, with a gain of 0 dB at 1 kHz. */
public enum FrequencyWeighting {
    /** A-weighting. */
    A,
    /** C-weighting. */
    C,
    /** No weighting: 0 dB at every frequency. */
    Z;

    private static final double F1_HZ = 20.59899705757;
    private static final double F2_HZ = 107.6526486430;
    private static final double F3_HZ = 737.8622307363;
    private static final double F4_HZ = 12194.21714800;

    /**
     * Returns the gain in dB (IEC 61672-1, annex E) at a frequency. The table of the standard holds for the exact
     * base-10 frequencies 1000 * 10^((n - 30) / 10), not for the nominal numbers.
     *
     * @param frequencyHz finite and above zero
     * @throws IllegalArgumentException if the frequency is outside this range
     */
    public double gainDb(double frequencyHz) {
        return 20 * Math.log10(gainRatio(frequencyHz));
    }

    /**
     * Returns the same gain as a ratio of voltages.
     *
     * @param frequencyHz finite and above zero
     * @throws IllegalArgumentException if the frequency is outside this range
     */
    public double gainRatio(double frequencyHz) {
        if (!Double.isFinite(frequencyHz) || frequencyHz <= 0) {
            throw new IllegalArgumentException("frequencyHz must be finite and above 0, but is " + frequencyHz);
        }
        return response(frequencyHz) / response(1000);
    }

    /**
     * Returns the phase in radians of the analogue filter that has the poles of the standard: an output wave leads the input by it. The
     * standard sets no limits to it; a peak level depends on it.
     *
     * @param frequencyHz finite and above zero
     * @throws IllegalArgumentException if the frequency is outside this range
     */
    public double phaseRadians(double frequencyHz) {
        if (!Double.isFinite(frequencyHz) || frequencyHz <= 0) {
            throw new IllegalArgumentException("frequencyHz must be finite and above 0, but is " + frequencyHz);
        }
        double outer = Math.PI - 2 * Math.atan(frequencyHz / F1_HZ) - 2 * Math.atan(frequencyHz / F4_HZ);
        return switch (this) {
            case A -> outer + Math.PI - Math.atan(frequencyHz / F2_HZ) - Math.atan(frequencyHz / F3_HZ);
            case C -> outer;
            case Z -> 0;
        };
    }

    private double response(double frequencyHz) {
        double square = frequencyHz * frequencyHz;
        double outer = F4_HZ * F4_HZ * square / ((square + F1_HZ * F1_HZ) * (square + F4_HZ * F4_HZ));
        return switch (this) {
            case A -> outer * square / Math.sqrt((square + F2_HZ * F2_HZ) * (square + F3_HZ * F3_HZ));
            case C -> outer;
            case Z -> 1;
        };
    }
}
