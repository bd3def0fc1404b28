// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.List;
import java.util.Optional;

/**
 * What follows from the squares of a tone and of what is left beside it, whether these come from one fit or were summed up over many.
 *
 * @param settings load and band
 * @param frequencyHz frequency of the tone
 * @param bandHighHz upper end of the band that the samples can show
 * @param squares mean square in V^2 of each order that was fitted, at its number
 * @param alternatingSquare mean square of everything but the direct voltage
 * @param restBandSquare mean square of what is left, within the band
 * @param restConductance real power in the load of what is left, for each V^2 of it; does not count with a resistance
 */
record ToneFigures(
        AnalysisSettings settings,
        double frequencyHz,
        double bandHighHz,
        double[] squares,
        double alternatingSquare,
        double restBandSquare,
        double restConductance) {
    private static final double LEAST_SINAD_RATIO = 1e-16;

    double powerWatts() {
        if (settings.load() instanceof LoadImpedance.Resistance) {
            return settings.load().realPowerWatts(Math.sqrt(alternatingSquare), frequencyHz);
        }
        double watts = 0;
        double modelSquare = 0;
        for (int n = 1; n < squares.length; n++) {
            watts += settings.load().realPowerWatts(Math.sqrt(squares[n]), n * frequencyHz);
            modelSquare += squares[n];
        }
        return Math.max(0, watts + (alternatingSquare - modelSquare) * restConductance);
    }

    private double thdPlusNoiseRRatio() {
        double unwanted = restBandSquare;
        int highest = SteadyTone.highestOrderInBand(squares.length - 1, bandHighHz, frequencyHz);
        for (int n = 2; n <= highest; n++) {
            unwanted += SteadyTone.isAboveLow(n, settings.bandLowHz(), frequencyHz) ? squares[n] : 0;
        }
        return Math.sqrt(unwanted / (unwanted + squares[1]));
    }

    /**
     * Returns all figures.
     *
     * @param dcVolts direct voltage
     * @param peakVolts largest distance of a sample from it
     * @param harmonics those that count
     * @param clipping whether the tops are cut off
     * @param burst the pattern, if the tone comes in bursts
     * @param notes what the reader should know
     */
    ChannelAnalysis analysis(
            double dcVolts,
            double peakVolts,
            List<Harmonic> harmonics,
            Clipping clipping,
            Optional<Burst> burst,
            List<String> notes) {
        double ratioSquare = 0;
        for (Harmonic harmonic : harmonics) {
            ratioSquare += harmonic.ratioToFundamental() * harmonic.ratioToFundamental();
        }
        double thdF = Math.sqrt(ratioSquare);
        double thdPlusNoiseR = thdPlusNoiseRRatio();
        double rms = Math.sqrt(alternatingSquare);
        double fundamentalRms = Math.sqrt(squares[1]);
        return new ChannelAnalysis(
                frequencyHz,
                rms,
                peakVolts,
                dcVolts,
                20 * Math.log10(peakVolts / rms),
                powerWatts(),
                fundamentalRms,
                settings.load().realPowerWatts(fundamentalRms, frequencyHz),
                thdF,
                thdF / Math.sqrt(1 + ratioSquare),
                thdPlusNoiseR,
                -20 * Math.log10(Math.max(LEAST_SINAD_RATIO, thdPlusNoiseR)),
                harmonics,
                clipping,
                burst,
                settings.bandLowHz(),
                bandHighHz,
                notes);
    }
}
