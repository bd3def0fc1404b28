// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.Arrays;
import org.ohmstead.signal.ExtremaPyramid;
import org.ohmstead.signal.Spectrum;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.Window;

/**
 * A spectrum ready to be drawn: levels in dB re 1 V RMS of all bins from the first above zero, four-term
 * Blackman-Harris window (Harris 1978).
 *
 * @param binHz distance of two bins
 * @param levelsDbv level of bin k + 1 at index k; an empty bin stands at {@link #LEAST_DBV}
 * @param floorDbv mean level that noise has in a bin; {@link #LEAST_DBV} where the harmonics lie too close to tell
 */
record SpectrumTrace(double binHz, ExtremaPyramid levelsDbv, double floorDbv) {
    /** Level of a bin in which nothing is, so that it has a place on a decibel axis. */
    static final double LEAST_DBV = -240;

    private static final int MOST_SAMPLES = 1 << 22;
    private static final int LEAST_SAMPLES = 16;

    /**
     * Transforms a stretch of a waveform.
     *
     * @param fundamentalHz the tone whose harmonics are no noise; 0 when there is none
     */
    static SpectrumTrace of(Waveform waveform, int from, int to, double fundamentalHz) {
        int middle = from + (to - from) / 2;
        int half = Math.min(MOST_SAMPLES, Math.max(LEAST_SAMPLES, to - from)) / 2;
        int first = Math.max(0, middle - half);
        int last = Math.min(waveform.size(), middle + half);
        Spectrum spectrum =
                Spectrum.of(last - first > 1 ? waveform.slice(first, last) : waveform, Window.BLACKMAN_HARRIS_4);
        double[] levels = new double[Math.max(1, spectrum.size() - 1)];
        Arrays.fill(levels, LEAST_DBV);
        for (int bin = 1; bin < spectrum.size(); bin++) {
            levels[bin - 1] = decibels(spectrum.voltsRmsAt(bin));
        }
        return new SpectrumTrace(
                spectrum.binHz(), ExtremaPyramid.of(levels), decibels(floorVoltsRms(spectrum, fundamentalHz)));
    }

    /**
     * Root mean square of the bins that hold noise only. Their squares are spread exponentially, so their median is
     * ln 2 of their mean; the median does not care for the odd whistle or carrier between them.
     */
    private static double floorVoltsRms(Spectrum spectrum, double fundamentalHz) {
        int lobe = spectrum.window().mainLobeHalfWidthBins() + 1;
        double[] squares = new double[spectrum.size()];
        int count = 0;
        for (int bin = lobe; bin < spectrum.size(); bin++) {
            double order = fundamentalHz > 0 ? Math.max(1, Math.rint(bin * spectrum.binHz() / fundamentalHz)) : 0;
            double awayBins = fundamentalHz > 0
                    ? Math.abs(bin - order * fundamentalHz / spectrum.binHz())
                    : Double.POSITIVE_INFINITY;
            if (awayBins > lobe) {
                squares[count] = spectrum.voltsRmsAt(bin) * spectrum.voltsRmsAt(bin);
                count++;
            }
        }
        if (count == 0) {
            return 0;
        }
        Arrays.sort(squares, 0, count);
        return Math.sqrt(squares[count / 2] / Math.log(2));
    }

    private static double decibels(double voltsRms) {
        return voltsRms > 0 ? Math.max(LEAST_DBV, 20 * Math.log10(voltsRms)) : LEAST_DBV;
    }

    /** Whether there are bins that hold noise only. */
    boolean floorKnown() {
        return floorDbv > LEAST_DBV;
    }

    /** Frequency of the level at an index. */
    double frequencyHz(int index) {
        return (index + 1) * binHz;
    }

    /** Index of the bin nearest to a frequency. */
    int nearestIndex(double frequencyHz) {
        long bin = Math.round(frequencyHz / binHz) - 1;
        return (int) Math.max(0, Math.min(levelsDbv.size() - 1, bin));
    }
}
