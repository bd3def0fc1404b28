// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.OptionalDouble;

/**
 * What a waveform analysis needs to be told.
 *
 * @param load the load the channel drove, for power
 * @param frequencyHz the frequency of the tone if known, as a hint: the strongest component within 10 % of it is taken;
 *     without it, the strongest component of the record
 * @param highestHarmonic highest order that counts as harmonic distortion, 2 to 200; harmonics above the band or above
 *     half the sample rate never count
 * @param bandLowHz lower end of the band for distortion and noise, 0 or above
 * @param bandHighHz upper end of the band, above the lower end; reduced to half the sample rate when it lies above
 */
public record AnalysisSettings(
        LoadImpedance load, OptionalDouble frequencyHz, int highestHarmonic, double bandLowHz, double bandHighHz) {
    private static final int MAX_HARMONIC = 200;

    /** Checks the ranges. */
    public AnalysisSettings {
        if (load == null || frequencyHz == null) {
            throw new IllegalArgumentException("load and frequencyHz must be given, but one is null");
        }
        if (frequencyHz.isPresent() && !(frequencyHz.getAsDouble() > 0 && frequencyHz.getAsDouble() < 1e9)) {
            throw new IllegalArgumentException("frequencyHz must be above 0 and below 1e9, but is " + frequencyHz);
        }
        if (highestHarmonic < 2 || highestHarmonic > MAX_HARMONIC) {
            throw new IllegalArgumentException("highestHarmonic must be 2 to 200, but is " + highestHarmonic);
        }
        if (!(bandLowHz >= 0) || !Double.isFinite(bandHighHz) || bandHighHz <= bandLowHz) {
            throw new IllegalArgumentException(
                    "bandLowHz must be 0 or above and bandHighHz finite and above it, but are " + bandLowHz + " and "
                            + bandHighHz);
        }
    }

    /** Returns settings for a load: unknown frequency, harmonics 2 to 20, 20 Hz to 20 kHz. */
    public static AnalysisSettings forLoad(LoadImpedance load) {
        return new AnalysisSettings(load, OptionalDouble.empty(), 20, 20, 20_000);
    }

    /** Returns settings for a resistive load in ohms, otherwise as {@link #forLoad}. */
    public static AnalysisSettings forResistance(double loadOhms) {
        return forLoad(new LoadImpedance.Resistance(loadOhms));
    }

    /** Returns these settings with another load. */
    public AnalysisSettings withLoad(LoadImpedance newLoad) {
        return new AnalysisSettings(newLoad, frequencyHz, highestHarmonic, bandLowHz, bandHighHz);
    }

    /** Returns these settings with a hint of the tone's frequency in hertz. */
    public AnalysisSettings withFrequencyHz(double newFrequencyHz) {
        return new AnalysisSettings(load, OptionalDouble.of(newFrequencyHz), highestHarmonic, bandLowHz, bandHighHz);
    }

    /** Returns these settings with another highest harmonic, 2 to 200. */
    public AnalysisSettings withHighestHarmonic(int newHighestHarmonic) {
        return new AnalysisSettings(load, frequencyHz, newHighestHarmonic, bandLowHz, bandHighHz);
    }

    /** Returns these settings with another band in hertz. */
    public AnalysisSettings withBand(double newBandLowHz, double newBandHighHz) {
        return new AnalysisSettings(load, frequencyHz, highestHarmonic, newBandLowHz, newBandHighHz);
    }
}
