// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.io.IOException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.internal.JavaSoundLines;
import org.ohmstead.measure.bench.internal.SoundCardBench;
import org.ohmstead.units.Unit;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;

/**
 * A sound card as source and recorder. What its full scale stands for must be found by a known voltage first
 * ({@link SoundCalibration}); the output of an amplifier reaches its input by way of a divider. Supply and load are a person's.
 */
@Component
public final class SoundCardBenchDriver implements BenchDriver {
    private static final List<String> RATES = List.of("192000", "96000", "48000", "44100");
    private static final int[] BITS = {24, 16};

    private static final DriverInfo INFO = new DriverInfo(
            "org.ohmstead.bench.sound-card",
            "1.0.0",
            "Sound card",
            "The computer's sound card feeds the amplifier and records its output by way of a divider.",
            DriverInfo.Kind.REAL,
            List.of(
                    new Setting.Text("output", "output", "A part of its name; empty for the usual one.", ""),
                    new Setting.Text("input", "input", "A part of its name; empty for the usual one.", ""),
                    new Setting.Choice("sampleRate", "sample rate", "The highest to try, in hertz.", RATES, "96000"),
                    new Setting.Number(
                            "outputVolts",
                            "output at full scale",
                            "RMS of a sine, by calibration.",
                            Unit.VOLT,
                            1,
                            0.001,
                            100),
                    new Setting.Number(
                            "voltsPerFullScale",
                            "input full scale",
                            "Peak at the divider's input, by calibration.",
                            Unit.VOLT,
                            50,
                            0.001,
                            10_000),
                    new Setting.Number(
                            "secondShare",
                            "second input",
                            "Volts at full scale of every further channel over those of the first.",
                            Unit.NONE,
                            1,
                            0.01,
                            100),
                    new Setting.Count(
                            "microphoneInput",
                            "microphone",
                            "Which of the inputs it is connected to, from 1; 0 for none.",
                            0,
                            0,
                            32),
                    new Setting.Number(
                            "pascalsPerFullScale",
                            "microphone's full scale",
                            "Peak sound pressure, in pascals, found by a calibrator.",
                            Unit.NONE,
                            100,
                            0.001,
                            100_000),
                    new Setting.Number(
                            "microphoneDb",
                            "microphone's uncertainty",
                            "Standard uncertainty (k = 1) of its calibration.",
                            Unit.DECIBEL,
                            0.5,
                            0,
                            10)));

    private final SoundLines lines;
    private final Clock clock;

    /** Makes a driver of the computer's sound cards. */
    @Activate
    public SoundCardBenchDriver() {
        this(new JavaSoundLines(), Clock.systemUTC());
    }

    /** Makes a driver of some lines, with a clock that tells when something was recorded. */
    public SoundCardBenchDriver(SoundLines lines, Clock clock) {
        this.lines = lines;
        this.clock = clock;
    }

    @Override
    public DriverInfo info() {
        return INFO;
    }

    @Override
    public Bench open(Subject subject, Settings settings) throws MeasurementException {
        String output = settings.text("output");
        String input = settings.text("input");
        int channels = Math.max(Math.max(2, subject.channelCount()), settings.count("microphoneInput"));
        double highestRate = Double.parseDouble(settings.choice("sampleRate"));
        AudioFormat format = lines.common(output, input, formats(highestRate, channels))
                .orElseThrow(() -> new MeasurementException("The sound card's output \"" + output + "\" and input \""
                        + input + "\" have no common format of " + channels
                        + " channels. Choose other devices or a lower sample rate."));
        SoundLines.Player player;
        try {
            player = lines.openPlayer(output, format);
        } catch (IOException e) {
            throw new MeasurementException(
                    "The sound card's output \"" + output + "\" cannot be opened. " + e.getMessage()
                            + " Close what else uses it.",
                    e);
        }
        try {
            return new SoundCardBench(subject, settings, format, player, lines.openTaker(input, format), clock);
        } catch (IOException e) {
            player.close();
            throw new MeasurementException(
                    "The sound card's input \"" + input + "\" cannot be opened. " + e.getMessage()
                            + " Close what else uses it.",
                    e);
        }
    }

    private static List<AudioFormat> formats(double highestRate, int channels) {
        List<AudioFormat> formats = new ArrayList<>();
        for (String rate : RATES) {
            for (int bits : BITS) {
                if (Double.parseDouble(rate) <= highestRate) {
                    formats.add(new AudioFormat(Float.parseFloat(rate), bits, channels, true, false));
                }
            }
        }
        return formats;
    }
}
