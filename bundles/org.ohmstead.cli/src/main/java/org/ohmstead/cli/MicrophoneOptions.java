// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Path;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.sound.MicrophoneCalibration;
import org.ohmstead.signal.sound.SoundException;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** The options that tell what a microphone's recording stands for. */
final class MicrophoneOptions {
    private static final double[] SHARES = {1};

    @Option(
            names = "--calibration",
            paramLabel = "TONE",
            description = "A recording of a calibrator's tone, with the same microphone and gain.")
    private Path tone;

    @Option(
            names = "--calibrator-db",
            paramLabel = "L",
            defaultValue = "94",
            description = "Level of the calibrator (default 94 dB).")
    private String levelDb;

    @Option(
            names = "--calibrator-hz",
            paramLabel = "F",
            defaultValue = "1000",
            description = "Frequency of the calibrator (default 1 kHz).")
    private String frequencyHz;

    @Option(
            names = "--calibrator-limits-db",
            paramLabel = "D",
            defaultValue = "0.4",
            description = "By how much its level may be off, as its certificate says (default 0.4 dB).")
    private String limitsDb;

    @Option(
            names = "--pascals-per-full-scale",
            paramLabel = "P",
            description = "Instead of a calibration tone: peak pressure at full scale, in pascals.")
    private String pascals;

    @Option(
            names = "--uncertainty-db",
            paramLabel = "U",
            defaultValue = "1",
            description = "Standard uncertainty (k = 1) of that pressure (default 1 dB).")
    private String uncertaintyDb;

    @Option(
            names = "--channel",
            paramLabel = "N",
            defaultValue = "1",
            description = "Channel of the files, from 1 (default 1).")
    private int channel;

    MicrophoneCalibration calibration() throws InputException, CaptureException, SoundException {
        if ((tone == null) == (pascals == null)) {
            throw new InputException(
                    "Give either --calibration with a recorded tone or --pascals-per-full-scale; without one of"
                            + " them a recording has no level.");
        }
        double level = Quantities.within(levelDb, Unit.DECIBEL, 0, 200, "--calibrator-db");
        double frequency = Quantities.within(frequencyHz, Unit.HERTZ, 1, 96_000, "--calibrator-hz");
        if (pascals != null) {
            return new MicrophoneCalibration(
                    Quantities.positive(pascals, Unit.NONE, "--pascals-per-full-scale"),
                    Quantities.within(uncertaintyDb, Unit.DECIBEL, 0, 20, "--uncertainty-db"),
                    level,
                    frequency);
        }
        double limits = Quantities.within(limitsDb, Unit.DECIBEL, 0, 10, "--calibrator-limits-db");
        return MicrophoneCalibration.fromTone(shares(tone), level, frequency, limits);
    }

    /** Returns a channel of a recording, in shares of full scale. */
    Waveform shares(Path file) throws InputException, CaptureException {
        Capture capture = CaptureFile.read(file, SHARES);
        if (channel < 1 || channel > capture.channels().size()) {
            throw new InputException("--channel is " + channel + ", but " + file.getFileName() + " has "
                    + capture.channels().size() + " channel(s).");
        }
        return capture.channels().get(channel - 1);
    }
}
