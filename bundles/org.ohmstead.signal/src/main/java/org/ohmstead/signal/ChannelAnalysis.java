// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.List;
import java.util.Optional;

/**
 * What one channel of a capture shows. If the tone comes in bursts, everything except {@link Burst#meanPowerWatts()} is
 * of the inside of the first whole burst.
 *
 * @param frequencyHz frequency of the tone, from a least-squares fit
 * @param outputVoltsRms volts RMS of the alternating part (direct voltage taken off, everything else included) over
 *     whole cycles
 * @param outputVoltsPeak largest distance of a sample from the direct voltage; with few samples per cycle the wave
 *     itself reaches higher between them
 * @param dcVolts direct voltage
 * @param crestFactorDb 20 log10(peak / RMS); 3.01 dB for a sine
 * @param powerWatts real power in the load of the alternating part; with a resistance, outputVoltsRms^2 / R
 * @param fundamentalVoltsRms volts RMS of the fundamental
 * @param fundamentalPowerWatts real power of the fundamental
 * @param thdFRatio total harmonic distortion over the listed harmonics, referred to the fundamental
 * @param thdRRatio the same referred to the RMS of fundamental and listed harmonics: F / sqrt(1 + F^2)
 * @param thdPlusNoiseRRatio everything in the band but the fundamental, referred to everything in the band
 * @param sinadDb -20 log10(thdPlusNoiseRRatio), at most 320 dB
 * @param harmonics the harmonics that were counted, from order 2 upwards: those below the upper end of the band
 * @param clipping whether the tops are cut off
 * @param burst the burst pattern, if the tone comes in bursts
 * @param bandLowHz lower end of the band that was used
 * @param bandHighHz upper end of the band that was used
 * @param notes what the reader of the figures should know, as plain sentences
 */
public record ChannelAnalysis(
        double frequencyHz,
        double outputVoltsRms,
        double outputVoltsPeak,
        double dcVolts,
        double crestFactorDb,
        double powerWatts,
        double fundamentalVoltsRms,
        double fundamentalPowerWatts,
        double thdFRatio,
        double thdRRatio,
        double thdPlusNoiseRRatio,
        double sinadDb,
        List<Harmonic> harmonics,
        Clipping clipping,
        Optional<Burst> burst,
        double bandLowHz,
        double bandHighHz,
        List<String> notes) {
    /** Checks that every figure is finite, and copies the lists. */
    public ChannelAnalysis {
        Checks.finite("frequencyHz", frequencyHz);
        Checks.finite("outputVoltsRms", outputVoltsRms);
        Checks.finite("outputVoltsPeak", outputVoltsPeak);
        Checks.finite("dcVolts", dcVolts);
        Checks.finite("crestFactorDb", crestFactorDb);
        Checks.finite("powerWatts", powerWatts);
        Checks.finite("fundamentalVoltsRms", fundamentalVoltsRms);
        Checks.finite("fundamentalPowerWatts", fundamentalPowerWatts);
        Checks.finite("thdFRatio", thdFRatio);
        Checks.finite("thdRRatio", thdRRatio);
        Checks.finite("thdPlusNoiseRRatio", thdPlusNoiseRRatio);
        Checks.finite("sinadDb", sinadDb);
        Checks.finite("bandLowHz", bandLowHz);
        Checks.finite("bandHighHz", bandHighHz);
        harmonics = List.copyOf(harmonics);
        notes = List.copyOf(notes);
    }

    /** Returns the highest order that was counted in the distortion, or 1 if no harmonic lies in the band. */
    public int highestHarmonicCounted() {
        return harmonics.isEmpty() ? 1 : harmonics.get(harmonics.size() - 1).order();
    }
}
