// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.time.Clock;
import java.util.Map;
import java.util.OptionalInt;
import javax.sound.sampled.AudioFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Mode;
import org.ohmstead.model.SupplyType;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;
import org.ohmstead.signal.Waveforms;

class SoundCardBenchDriverTest {
    private static final Subject SUBJECT = Subjects.of(2, SupplyType.UNREGULATED, Mode.STEREO);

    /** A card whose input hears its output, from anywhere in the loop, at the same share of full scale. */
    private static final class Looped implements SoundLines {
        private final float highestRate;
        private final int highestBits;
        AudioFormat format;
        byte[] loop = {};
        int opened;
        boolean broken;
        boolean inputMissing;

        Looped(float highestRate, int highestBits) {
            this.highestRate = highestRate;
            this.highestBits = highestBits;
        }

        @Override
        public boolean plays(String device, AudioFormat wanted) {
            return wanted.getSampleRate() <= highestRate;
        }

        @Override
        public boolean records(String device, AudioFormat wanted) {
            return wanted.getSampleSizeInBits() <= highestBits;
        }

        @Override
        public Player openPlayer(String device, AudioFormat wanted) {
            format = wanted;
            opened++;
            return new Player() {
                @Override
                public void loop(byte[] frames) throws IOException {
                    if (broken) {
                        throw new IOException("It was unplugged.");
                    }
                    loop = frames;
                }

                @Override
                public void silence() {
                    loop = new byte[0];
                }

                @Override
                public void close() {
                    opened--;
                }
            };
        }

        @Override
        public Taker openTaker(String device, AudioFormat wanted) throws IOException {
            if (inputMissing) {
                throw new IOException("It is in use.");
            }
            opened++;
            return new Taker() {
                @Override
                public byte[] take(int octets) {
                    byte[] taken = new byte[octets];
                    int from = 777 * format.getFrameSize();
                    for (int i = 0; i < octets && loop.length > 0; i++) {
                        taken[i] = loop[(from + i) % loop.length];
                    }
                    return taken;
                }

                @Override
                public void close() {
                    opened--;
                }
            };
        }
    }

    private static Bench open(Looped card, String... settings) throws Exception {
        SoundCardBenchDriver driver = new SoundCardBenchDriver(card, Clock.systemUTC());
        Map<String, String> given =
                new java.util.HashMap<>(Map.of("outputVolts", "2", "voltsPerFullScale", "40", "secondShare", "1.05"));
        for (int i = 0; i < settings.length; i += 2) {
            given.put(settings[i], settings[i + 1]);
        }
        return driver.open(SUBJECT, Settings.of(driver.info().settings(), given));
    }

    private static ChannelAnalysis analysis(Waveform wave, double hz) throws Exception {
        return WaveformAnalyzer.analyze(wave, AnalysisSettings.forResistance(1).withFrequencyHz(hz));
    }

    @ParameterizedTest
    @CsvSource({"96000,24,96000,24", "48000,24,48000,24", "44100,16,44100,16", "192000,16,96000,16"})
    void agreesOnAFormatAndPlaysAndRecordsInVolts(float highestRate, int highestBits, float rate, int bits)
            throws Exception {
        Looped card = new Looped(highestRate, highestBits);
        try (Bench bench = open(card)) {
            assertEquals(rate, card.format.getSampleRate());
            assertEquals(bits, card.format.getSampleSizeInBits());
            bench.setSupplyVolts(14.4);
            bench.feed(Feed.Tone.of(1000, -6.0205999));
            Acquisition acquisition = bench.acquire(0.2);
            // Half of full scale: 20 V peak of 40 V, 21 V in the second channel; 1 V RMS is fed.
            ChannelAnalysis a = analysis(acquisition.output().channels().get(0), 1000);
            double step = Math.pow(2, 1 - bits) * 40;
            assertEquals(20 / Math.sqrt(2), a.fundamentalVoltsRms(), step);
            assertEquals(
                    21 / Math.sqrt(2),
                    analysis(acquisition.output().channels().get(1), 1000).fundamentalVoltsRms(),
                    step);
            assertEquals(1000, a.frequencyHz(), 0.01);
            assertTrue(a.thdPlusNoiseRRatio() < Math.pow(2, 1 - bits), a.toString());
            assertEquals(
                    1,
                    analysis(acquisition.input().orElseThrow().channels().get(0), 1000)
                            .outputVoltsRms(),
                    1e-6);
        }
        assertEquals(0, card.opened);
    }

    /** Half of full scale of 40 Pa is 20 Pa peak, 14.142 Pa RMS, 116.99 dB; at 100 Hz A-weighted 19.14 dB less (IEC 61672-1). */
    @Test
    void hearsByAMicrophone() throws Exception {
        Looped card = new Looped(48_000, 24);
        try (Bench bench = open(card, "microphoneInput", "2", "pascalsPerFullScale", "40", "microphoneDb", "0.3")) {
            assertTrue(bench.abilities().contains(Ability.SOUND_LEVEL));
            bench.setSupplyVolts(14.4);
            bench.feed(Feed.Tone.of(100, -6.0205999));
            SoundObservation heard = bench.observeSound(FrequencyWeighting.A, "", 2);
            assertEquals(116.9897 - 19.1428, heard.levelDb(), 0.01);
            assertEquals(0.3, heard.standardUncertaintyDb().orElseThrow());
            bench.feed(Feed.Tone.of(100, 0));
            String message = assertThrows(
                            MeasurementException.class, () -> bench.observeSound(FrequencyWeighting.A, "", 1))
                    .getMessage();
            assertTrue(message.startsWith("The microphone's input is clipped"), message);
        }
        try (Bench without = open(card)) {
            assertFalse(without.abilities().contains(Ability.SOUND_LEVEL));
            assertThrows(MeasurementException.class, () -> without.observeSound(FrequencyWeighting.A, "", 1));
        }
    }

    @Test
    void feedsOneChannelAndBursts() throws Exception {
        try (Bench bench = open(new Looped(48_000, 24))) {
            bench.setSupplyVolts(14.4);
            bench.feed(new Feed.Tone(440, -20, OptionalInt.of(1)));
            Acquisition one = bench.acquire(0.1);
            for (double volts : one.output().channels().get(0).toArray()) {
                assertEquals(0, volts);
            }
            assertEquals(
                    4.2 / Math.sqrt(2),
                    analysis(one.output().channels().get(1), 440).outputVoltsRms(),
                    0.003);
            bench.feed(new Feed.Burst(1000, -6.0205999, 0.02, 0.5, -20));
            ChannelAnalysis burst =
                    analysis(bench.acquire(1.1).output().channels().get(0), 1000);
            assertEquals(0.02, burst.burst().orElseThrow().onSeconds(), 1e-3);
            assertEquals(200, burst.burst().orElseThrow().powerWatts(), 0.5);
        }
    }

    @Test
    void fallsSilentAndSaysWhatItCannotDo() throws Exception {
        Looped card = new Looped(48_000, 24);
        try (Bench bench = open(card)) {
            bench.setSupplyVolts(14.4);
            bench.feed(Feed.Tone.of(1000, -6));
            assertTrue(card.loop.length > 0);
            bench.standDown();
            assertEquals(0, card.loop.length);
            assertThrows(MeasurementException.class, () -> bench.feed(Feed.Tone.of(1000, -6)));
            assertThrows(MeasurementException.class, () -> bench.setSupplyVolts(12));
            assertThrows(MeasurementException.class, () -> bench.connect(Mode.BRIDGED, SUBJECT.load()));
            bench.setSupplyVolts(14.4);
            assertThrows(MeasurementException.class, () -> bench.feed(Feed.Tone.of(23_000, -6)));
            card.broken = true;
            String message = assertThrows(MeasurementException.class, () -> bench.feed(Feed.Tone.of(1000, -6)))
                    .getMessage();
            assertTrue(message.contains("It was unplugged."), message);
        }
        card.inputMissing = true;
        assertThrows(MeasurementException.class, () -> open(card));
        assertEquals(0, card.opened);
        assertThrows(MeasurementException.class, () -> open(new Looped(48_000, 8)));
        assertThrows(MeasurementException.class, () -> open(new Looped(8_000, 24)));
    }

    /** 5 V RMS that fill 0.25 of full scale (peak): full scale stands for 5 sqrt 2 / 0.25 = 28.284 V. */
    @Test
    void isCalibratedByAKnownVoltage() throws Exception {
        Waveform quarter = Waveforms.sine(48_000, 4800, 1000, 0.25, 0.3);
        assertEquals(28.28427, SoundCalibration.voltsPerFullScale(quarter, 5), 1e-4);
        assertEquals(2, SoundCalibration.outputVoltsRms(0.2, -20), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> SoundCalibration.outputVoltsRms(0, -20));
    }
}
