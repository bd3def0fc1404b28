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
import org.ohmstead.measure.bench.internal.Faults;
import org.ohmstead.measure.bench.internal.JavaSoundLines;
import org.ohmstead.measure.bench.internal.SoundCardBench;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;

/**
 * A sound card as source and recorder. What its full scale stands for must be found by a known voltage first
 * ({@link SoundCalibration}); the output of an amplifier reaches its input by way of a divider. Supply and load are a person's.
 */
@Component
public final class SoundCardBenchDriver implements BenchDriver {
    private static final Messages TEXTS = Messages.of(SoundCardBenchDriver.class);

    private static final List<String> RATES = List.of("192000", "96000", "48000", "44100");
    private static final int[] BITS = {24, 16};

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
        return new DriverInfo(
                "org.ohmstead.bench.sound-card",
                "1.0.0",
                TEXTS.text("soundCard.name"),
                TEXTS.text("soundCard.summary"),
                DriverInfo.Kind.REAL,
                settings());
    }

    private static List<Setting> settings() {
        return List.of(
                new Setting.Text("output", TEXTS.text("soundCard.output"), TEXTS.text("soundCard.output.help"), ""),
                new Setting.Text("input", TEXTS.text("soundCard.input"), TEXTS.text("soundCard.input.help"), ""),
                new Setting.Choice(
                        "sampleRate",
                        TEXTS.text("soundCard.sampleRate"),
                        TEXTS.text("soundCard.sampleRate.help"),
                        RATES,
                        "96000"),
                new Setting.Number(
                        "outputVolts",
                        TEXTS.text("soundCard.outputVolts"),
                        TEXTS.text("soundCard.outputVolts.help"),
                        Unit.VOLT,
                        1,
                        0.001,
                        100),
                new Setting.Number(
                        "voltsPerFullScale",
                        TEXTS.text("soundCard.voltsPerFullScale"),
                        TEXTS.text("soundCard.voltsPerFullScale.help"),
                        Unit.VOLT,
                        50,
                        0.001,
                        10_000),
                new Setting.Number(
                        "secondShare",
                        TEXTS.text("soundCard.secondShare"),
                        TEXTS.text("soundCard.secondShare.help"),
                        Unit.NONE,
                        1,
                        0.01,
                        100),
                new Setting.Count(
                        "microphoneInput",
                        TEXTS.text("soundCard.microphoneInput"),
                        TEXTS.text("soundCard.microphoneInput.help"),
                        0,
                        0,
                        32),
                new Setting.Number(
                        "pascalsPerFullScale",
                        TEXTS.text("soundCard.pascalsPerFullScale"),
                        TEXTS.text("soundCard.pascalsPerFullScale.help"),
                        Unit.NONE,
                        100,
                        0.001,
                        100_000),
                new Setting.Number(
                        "microphoneDb",
                        TEXTS.text("soundCard.microphoneDb"),
                        TEXTS.text("soundCard.microphoneDb.help"),
                        Unit.DECIBEL,
                        0.5,
                        0,
                        10));
    }

    @Override
    public Bench open(Subject subject, Settings settings) throws MeasurementException {
        String output = settings.text("output");
        String input = settings.text("input");
        int channels = Math.max(Math.max(2, subject.channelCount()), settings.count("microphoneInput"));
        double highestRate = Double.parseDouble(settings.choice("sampleRate"));
        AudioFormat format = lines.common(output, input, formats(highestRate, channels))
                .orElseThrow(() -> Faults.of("noFormat", output, input, channels));
        SoundLines.Player player;
        try {
            player = lines.openPlayer(output, format);
        } catch (IOException e) {
            throw Faults.because(e, "output", output, Said.by(e));
        }
        try {
            return new SoundCardBench(subject, settings, format, player, lines.openTaker(input, format), clock);
        } catch (IOException e) {
            player.close();
            throw Faults.because(e, "input", input, Said.by(e));
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
