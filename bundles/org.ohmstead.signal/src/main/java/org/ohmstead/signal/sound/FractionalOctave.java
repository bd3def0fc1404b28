// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.Locale;

/**
 * Bands of a fraction of an octave, by the base-ten system of IEC 61260-1: the octave ratio is G = 10^(3/10), the exact middle of the
 * band x of a width of 1/b octave is 1000 G^(x/b) Hz, and its edges are G^(1/(2b)) away.
 */
public enum FractionalOctave {
    /** Whole octaves. */
    OCTAVE(1),
    /** Thirds of an octave. */
    THIRD_OCTAVE(3);

    private static final double OCTAVE_RATIO = Math.pow(10, 0.3);
    private static final double[] NOMINAL = {1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8};
    private static final int TENTHS_OF_THOUSAND = 30;

    private final int perOctave;

    FractionalOctave(int perOctave) {
        this.perOctave = perOctave;
    }

    /** Returns how many make an octave. */
    public int perOctave() {
        return perOctave;
    }

    /** Returns the exact middle in hertz of band x; band 0 is that at 1 kHz. */
    public double centreHz(int x) {
        return 1000 * Math.pow(OCTAVE_RATIO, x / (double) perOctave);
    }

    /** Returns the lower edge in hertz of band x. */
    public double lowHz(int x) {
        return centreHz(x) * Math.pow(OCTAVE_RATIO, -0.5 / perOctave);
    }

    /** Returns the upper edge in hertz of band x. */
    public double highHz(int x) {
        return centreHz(x) * Math.pow(OCTAVE_RATIO, 0.5 / perOctave);
    }

    /** Returns the number in hertz that band x is called by, such as 31.5 (annex E of the standard). */
    public double nominalHz(int x) {
        int tenths = TENTHS_OF_THOUSAND + x * 3 / perOctave;
        int decade = Math.floorDiv(tenths, NOMINAL.length);
        return NOMINAL[Math.floorMod(tenths, NOMINAL.length)] * Math.pow(10, decade);
    }

    /** Returns the name of band x in a neutral form, such as "31.5 Hz". */
    public String name(int x) {
        double hz = nominalHz(x);
        double rounded = Math.rint(hz * 100) / 100;
        return rounded == Math.rint(rounded) ? String.format(Locale.ROOT, "%.0f Hz", rounded) : rounded + " Hz";
    }

    /** Returns the number of the band that holds a frequency above 0 Hz. */
    public int bandOf(double frequencyHz) {
        Checks.positive("frequencyHz", frequencyHz);
        return (int) Math.rint(perOctave * Math.log(frequencyHz / 1000) / Math.log(OCTAVE_RATIO));
    }
}
