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

    @Option(names = "--calibration", paramLabel = "TONE", descriptionKey = "microphone.calibration")
    private Path tone;

    @Option(
            names = "--calibrator-db",
            paramLabel = "L",
            defaultValue = "94",
            descriptionKey = "microphone.calibrator-db")
    private String levelDb;

    @Option(
            names = "--calibrator-hz",
            paramLabel = "F",
            defaultValue = "1000",
            descriptionKey = "microphone.calibrator-hz")
    private String frequencyHz;

    @Option(
            names = "--calibrator-limits-db",
            paramLabel = "D",
            defaultValue = "0.4",
            descriptionKey = "microphone.calibrator-limits-db")
    private String limitsDb;

    @Option(names = "--pascals-per-full-scale", paramLabel = "P", descriptionKey = "microphone.pascals-per-full-scale")
    private String pascals;

    @Option(
            names = "--uncertainty-db",
            paramLabel = "U",
            defaultValue = "1",
            descriptionKey = "microphone.uncertainty-db")
    private String uncertaintyDb;

    @Option(names = "--channel", paramLabel = "N", defaultValue = "1", descriptionKey = "microphone.channel")
    private int channel;

    MicrophoneCalibration calibration() throws InputException, CaptureException, SoundException {
        if ((tone == null) == (pascals == null)) {
            throw new InputException(Texts.of("microphone.either"));
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
            throw new InputException(Texts.of(
                    "microphone.channel",
                    channel,
                    file.getFileName(),
                    capture.channels().size()));
        }
        return capture.channels().get(channel - 1);
    }
}
