// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import org.ohmstead.signal.SineFit;
import org.ohmstead.signal.Waveform;

/**
 * What the full scale of a recorder stands for with a certain microphone and gain, found by a sound of known level. It holds for as long
 * as neither is changed.
 *
 * @param pascalsPerFullScale peak pressure at full scale, above 0
 * @param standardUncertaintyDb k = 1, in dB, 0 or above
 * @param levelDb level of the sound that it was found by
 * @param frequencyHz its frequency, above 0
 */
public record MicrophoneCalibration(
        double pascalsPerFullScale, double standardUncertaintyDb, double levelDb, double frequencyHz) {
    /** Level of the usual calibrator. */
    public static final double USUAL_LEVEL_DB = 94;
    /** Frequency of the usual calibrator. */
    public static final double USUAL_FREQUENCY_HZ = 1000;

    private static final double FULL_SHARE = 0.9999;
    private static final double SMALLEST_SHARE = 1e-4;
    private static final double FREQUENCY_RATIO = 0.02;
    private static final double MOST_RESIDUAL_RATIO = 0.1;
    private static final double MOST_DRIFT_DB = 0.2;
    private static final double SHORTEST_SECONDS = 1;
    private static final int PARTS = 5;

    public MicrophoneCalibration {
        Checks.positive("pascalsPerFullScale", pascalsPerFullScale);
        Checks.notNegative("standardUncertaintyDb", standardUncertaintyDb);
        Checks.finite("levelDb", levelDb);
        Checks.positive("frequencyHz", frequencyHz);
    }

    /**
     * Returns the calibration that a recorded tone gives. A sine is fitted to five parts of it by least squares (IEEE Std 1057); the
     * spread of the five joins the calibrator's uncertainty, whose limits are taken for those of a rectangular distribution (GUM 4.3.7).
     *
     * @param shares the recording, in shares of full scale: a file that is read with 1 V for full scale
     * @param levelDb level that the calibrator makes
     * @param frequencyHz its nominal frequency
     * @param limitsDb by how much its level may be off, half the width of the interval, 0 or above
     * @throws SoundException if the recording is too short, clipped, not a steady tone of this frequency, or mostly something else
     */
    public static MicrophoneCalibration fromTone(Waveform shares, double levelDb, double frequencyHz, double limitsDb)
            throws SoundException {
        Checks.notNegative("limitsDb", limitsDb);
        requireUsable(shares);
        double[] amplitudes = new double[PARTS];
        double mean = 0;
        for (int part = 0; part < PARTS; part++) {
            int from = (int) ((long) shares.size() * part / PARTS);
            int to = (int) ((long) shares.size() * (part + 1) / PARTS);
            amplitudes[part] = fitted(shares.slice(from, to), frequencyHz);
            mean += amplitudes[part] / PARTS;
        }
        double squares = 0;
        double widestDb = 0;
        for (double amplitude : amplitudes) {
            double offDb = 20 * Math.log10(amplitude / mean);
            squares += offDb * offDb;
            widestDb = Math.max(widestDb, Math.abs(offDb));
        }
        if (widestDb > MOST_DRIFT_DB) {
            throw new SoundException(Texts.said("calibration.unsteady", widestDb));
        }
        double spreadDb = Math.sqrt(squares / (PARTS - 1) / PARTS);
        double pascalsPeak = Math.sqrt(2) * SoundLevelMeter.pascals(levelDb);
        return new MicrophoneCalibration(
                pascalsPeak / mean, Math.hypot(spreadDb, limitsDb / Math.sqrt(3)), levelDb, frequencyHz);
    }

    private static void requireUsable(Waveform shares) throws SoundException {
        if (shares.durationSeconds() < SHORTEST_SECONDS) {
            throw new SoundException(Texts.said("calibration.short", shares.durationSeconds(), SHORTEST_SECONDS));
        }
        double highest = 0;
        for (int i = 0; i < shares.size(); i++) {
            highest = Math.max(highest, Math.abs(shares.voltsAt(i)));
        }
        if (highest >= FULL_SHARE) {
            throw new SoundException(Texts.said("calibration.clipped"));
        }
        if (highest < SMALLEST_SHARE) {
            throw new SoundException(Texts.said("calibration.faint"));
        }
    }

    private static double fitted(Waveform part, double frequencyHz) throws SoundException {
        SineFit fit = SineFit.fourParameter(part.toArray(), part.sampleRateHz(), frequencyHz);
        if (!fit.converged() || Math.abs(fit.frequencyHz() - frequencyHz) > FREQUENCY_RATIO * frequencyHz) {
            throw new SoundException(Texts.said("calibration.other", frequencyHz));
        }
        double rms = fit.amplitudeVolts() / Math.sqrt(2);
        if (fit.residualVoltsRms() > MOST_RESIDUAL_RATIO * rms) {
            throw new SoundException(Texts.said("calibration.noisy", frequencyHz, fit.residualVoltsRms() / rms));
        }
        return fit.amplitudeVolts();
    }

    /**
     * Returns a recording in pascals.
     *
     * @param shares the recording, in shares of full scale
     */
    public Waveform pascals(Waveform shares) {
        double[] samples = shares.toArray();
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= pascalsPerFullScale;
        }
        return Waveform.of(shares.sampleRateHz(), samples);
    }

    /** Returns the level in dB of a sine that just reaches full scale: the loudest that can be recorded. */
    public double highestLevelDb() {
        return SoundLevelMeter.levelDb(pascalsPerFullScale / Math.sqrt(2));
    }
}
