// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.nio.file.Path;
import java.util.OptionalDouble;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.sound.MicrophoneCalibration;
import org.ohmstead.signal.sound.SoundException;
import org.ohmstead.signal.sound.SoundLevelMeter;
import org.ohmstead.signal.sound.SoundLevels;
import org.ohmstead.signal.sound.SoundPoint;

/**
 * A level from a recording.
 *
 * @param order what was asked for
 * @param calibration what the recorder's full scale stands for
 * @param levels what was found
 * @param clipped whether the recording reaches full scale, so that the true level is higher
 */
record RecordedLevel(Order order, MicrophoneCalibration calibration, SoundLevels levels, boolean clipped) {
    private static final double[] SHARES = {1};
    private static final double FULL_SHARE = 0.9999;

    /**
     * What is asked for.
     *
     * @param calibrationFile a recording of the calibrator
     * @param calibratorDb its level
     * @param limitsDb by how much that may be off
     * @param file the recording; its first channel is taken
     * @param weighting frequency weighting
     * @param frequencyHz of the tone, for the table
     * @param driveDb of the tone, for the table
     * @param position of the microphone, for the table
     */
    record Order(
            Path calibrationFile,
            double calibratorDb,
            double limitsDb,
            Path file,
            FrequencyWeighting weighting,
            double frequencyHz,
            OptionalDouble driveDb,
            String position) {}

    /** Reads the files and measures; takes as long as they are. */
    static RecordedLevel of(Order order) throws CaptureException, SoundException {
        Waveform tone =
                CaptureFile.read(order.calibrationFile(), SHARES).channels().get(0);
        MicrophoneCalibration calibration = MicrophoneCalibration.fromTone(
                tone, order.calibratorDb(), MicrophoneCalibration.USUAL_FREQUENCY_HZ, order.limitsDb());
        Waveform shares = CaptureFile.read(order.file(), SHARES).channels().get(0);
        boolean clipped = false;
        for (int i = 0; i < shares.size() && !clipped; i++) {
            clipped = Math.abs(shares.voltsAt(i)) >= FULL_SHARE;
        }
        SoundLevels levels = SoundLevelMeter.measure(calibration.pascals(shares), order.weighting());
        return new RecordedLevel(order, calibration, levels, clipped);
    }

    /** Returns the row of the table. */
    SoundPoint point() {
        return new SoundPoint(
                order.frequencyHz(), order.driveDb(), levels.equivalentDb(), order.weighting(), order.position());
    }
}
