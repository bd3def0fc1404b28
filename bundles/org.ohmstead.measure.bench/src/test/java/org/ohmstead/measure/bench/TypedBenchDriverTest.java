// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Mode;
import org.ohmstead.model.SupplyType;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;
import org.ohmstead.signal.Waveforms;

class TypedBenchDriverTest {
    private static final Subject SUBJECT =
            Subjects.of(2, SupplyType.UNREGULATED, Mode.STEREO, Subjects.rating(4, 90), Subjects.rating(2, 165));
    private static final Instant NOW = Instant.parse("2026-03-02T09:14:05Z");

    /** A person who answers what was written down, and agrees to everything until told not to. */
    private static final class Scripted implements OperatorPort {
        final Deque<OptionalDouble> answers = new ArrayDeque<>();
        final List<String> heard = new ArrayList<>();
        final List<Question> asked = new ArrayList<>();
        String text = "";
        boolean agrees = true;
        boolean insists = true;

        Scripted answering(double... values) {
            for (double value : values) {
                answers.add(OptionalDouble.of(value));
            }
            return this;
        }

        @Override
        public OptionalDouble ask(Question question) {
            asked.add(question);
            return answers.isEmpty() ? OptionalDouble.empty() : answers.remove();
        }

        @Override
        public Optional<String> askText(String what) {
            heard.add(what);
            return text.isEmpty() ? Optional.empty() : Optional.of(text);
        }

        @Override
        public boolean confirm(String sentences) {
            heard.add(sentences);
            return agrees && (insists || !sentences.endsWith("Is the value right?"));
        }

        @Override
        public void warn(String sentences) {
            heard.add(sentences);
        }
    }

    private static Bench ready(Scripted person, String output) throws Exception {
        TypedBenchDriver driver = new TypedBenchDriver(person, Clock.fixed(NOW, ZoneOffset.UTC));
        Bench bench = driver.open(SUBJECT, Settings.of(driver.info().settings(), Map.of("output", output)));
        bench.connect(Mode.STEREO, SUBJECT.load());
        bench.setSupplyVolts(14.4);
        return bench;
    }

    @Test
    void tellsWhatToDoAndTakesWhatTheMetersShow() throws Exception {
        Scripted person = new Scripted().answering(14.39, 1.2, 24.5);
        try (Bench bench = ready(person, TypedBenchDriver.NOTHING)) {
            bench.feed(Feed.Tone.of(1000, -30));
            Observation shown = bench.observe();
            assertEquals(NOW, shown.at());
            assertEquals(14.39, shown.supplyVolts().orElseThrow());
            assertEquals(1.2, shown.supplyAmps().orElseThrow());
            assertEquals(24.5, shown.caseCelsius().orElseThrow());
            assertFalse(bench.abilities().contains(Ability.WAVEFORM));
            assertThrows(MeasurementException.class, () -> bench.acquire(1));
        }
        assertEquals(
                List.of(
                        "Connect the load \"4ohm\" (4 ohm), stereo.",
                        "Set the supply to 14.40 V at the amplifier's terminals.",
                        "Feed a sine of 1000 Hz at -30.00 dB into all channels.",
                        "Turn the source off and switch the supply off now."),
                person.heard);
    }

    @Test
    void takesASoundLevelFromAMeter() throws Exception {
        Scripted person = new Scripted().answering(400, 97.4);
        try (Bench bench = ready(person, TypedBenchDriver.NOTHING)) {
            assertTrue(bench.abilities().contains(Ability.SOUND_LEVEL));
            bench.feed(Feed.Tone.of(50, -30));
            SoundObservation heard = bench.observeSound(FrequencyWeighting.C, "driver's head", 2);
            assertEquals(new SoundObservation(NOW, 97.4, FrequencyWeighting.C, OptionalDouble.empty()), heard);
            assertEquals(
                    "sound level at \"driver's head\", C-weighted, averaged over 2 s",
                    person.asked.get(person.asked.size() - 1).what());
            assertTrue(person.heard.get(3).contains("cannot be 400 dB"), person.heard.toString());
            bench.standDown();
            assertThrows(MeasurementException.class, () -> bench.observeSound(FrequencyWeighting.C, "", 1));
        }
    }

    @Test
    void asksBackWhatIsFarFromTheForecast() throws Exception {
        // 12.2 V where 14.4 V are set; 500 A are impossible to believe, 5000 A impossible.
        Scripted person = new Scripted().answering(12.2, 5000, 1.2, 24);
        try (Bench bench = ready(person, TypedBenchDriver.NOTHING)) {
            bench.observe();
            String back = person.heard.get(2);
            assertTrue(
                    back.startsWith(
                            "For the supply volts at the terminals 12.2 V was given, but the forecast expects 12.9"),
                    back);
            assertTrue(person.heard.get(3).startsWith("The supply current cannot be 5000 A"), person.heard.get(3));
            person.agrees = false;
            person.answering(12.2, 12.1, 12.2, 12.1, 12.2);
            String message =
                    assertThrows(MeasurementException.class, bench::observe).getMessage();
            assertTrue(message.startsWith("No usable value was given for the supply volts"), message);
        }
    }

    /** The forecast of the output is the simulated bench's: a typing error of a decade is asked back. */
    @Test
    void makesAWaveThatHasTheVoltsAndTheDistortionThatWereTyped() throws Exception {
        Scripted person = new Scripted();
        try (Bench bench = ready(person, TypedBenchDriver.VOLTS_AND_DISTORTION)) {
            bench.feed(Feed.Tone.of(1000, -20));
            // Channel A: 4.9 V and 0.5 %; B first ten times too much, then right.
            person.insists = false;
            person.answering(4.9, 0.5, 49, 4.85, 0.6, 14.4, 3, 25);
            int before = person.heard.size();
            Acquisition acquisition = bench.acquire(0.1);
            assertTrue(
                    person.heard.get(before).startsWith("For the volts RMS of the output of channel B 49 V was given"),
                    person.heard.toString());
            ChannelAnalysis a =
                    WaveformAnalyzer.analyze(acquisition.output().channels().get(0), AnalysisSettings.forResistance(4));
            assertEquals(4.9, a.outputVoltsRms(), 1e-6);
            assertEquals(0.005, a.thdFRatio(), 1e-6);
            assertTrue(acquisition.output().formatText().contains("typed in"));
        }
    }

    @TempDir
    private Path folder;

    @Test
    void readsTheCaptureThatThePersonMade() throws Exception {
        Waveform wave = Waveforms.sine(48_000, 4800, 1000, 7, 0);
        Path file = folder.resolve("mine.wav");
        WavFile.write(file, new Capture(List.of(wave, wave), "made", "made"), 24, new double[] {20});
        Scripted person = new Scripted();
        try (Bench bench = ready(person, TypedBenchDriver.CAPTURE_FILES)) {
            person.text = file.toString();
            person.answering(20, 14.4, 0.9, 25);
            assertEquals(7, bench.acquire(0.1).output().channels().get(0).voltsAt(12), 1e-4);
            person.text = folder.resolve("none.wav").toString();
            person.answering(20);
            assertThrows(MeasurementException.class, () -> bench.acquire(0.1));
            person.text = "";
            String message = assertThrows(MeasurementException.class, () -> bench.acquire(0.1))
                    .getMessage();
            assertTrue(message.startsWith("The person at the bench cancelled."), message);
        }
    }

    @Test
    void endsWhenThePersonSaysNo() throws Exception {
        Scripted person = new Scripted();
        try (Bench bench = ready(person, TypedBenchDriver.NOTHING)) {
            person.agrees = false;
            assertThrows(MeasurementException.class, () -> bench.feed(Feed.Tone.of(1000, -10)));
            person.agrees = true;
            bench.standDown();
            assertThrows(MeasurementException.class, () -> bench.feed(Feed.Tone.of(1000, -10)));
        }
    }
}
