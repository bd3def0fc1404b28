// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;

/** Finds what a sound card's full scale stands for, by a known voltage. */
public final class SoundCalibration {
    private SoundCalibration() {}

    /**
     * Returns the volts that full scale of an input stands for, divider included: known volts over recorded share of full scale.
     *
     * @param fullScaleShares a record of the known tone, 1 being full scale
     * @param knownVoltsRms what a voltmeter showed at the divider's input meanwhile, above 0
     * @throws CaptureException when the record holds no clean tone; the message says what to do
     */
    public static double voltsPerFullScale(Waveform fullScaleShares, double knownVoltsRms) throws CaptureException {
        requirePositive(knownVoltsRms);
        return knownVoltsRms
                / WaveformAnalyzer.analyze(fullScaleShares, AnalysisSettings.forResistance(1))
                        .fundamentalVoltsRms();
    }

    /**
     * Returns the volts RMS of a sine at the output's full scale.
     *
     * @param knownVoltsRms what a voltmeter showed, above 0
     * @param driveDb level that was played meanwhile, relative to full scale, at most 0
     */
    public static double outputVoltsRms(double knownVoltsRms, double driveDb) {
        requirePositive(knownVoltsRms);
        if (!Double.isFinite(driveDb) || driveDb > 0) {
            throw new IllegalArgumentException("driveDb is " + driveDb + "; it must be a finite number of at most 0");
        }
        return knownVoltsRms / Math.pow(10, driveDb / 20);
    }

    private static void requirePositive(double knownVoltsRms) {
        if (!Double.isFinite(knownVoltsRms) || knownVoltsRms <= 0) {
            throw new IllegalArgumentException(
                    "knownVoltsRms is " + knownVoltsRms + "; it must be a finite number above 0");
        }
    }
}
