// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.measure.scpi.BenchFixture.DRIVER;
import static org.ohmstead.measure.scpi.BenchFixture.open;
import static org.ohmstead.measure.scpi.BenchFixture.refusal;
import static org.ohmstead.measure.scpi.BenchFixture.subject;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;

class ScpiBenchTest {
    private static final double FREQUENCY_TOLERANCE = 1e-6;
    private static final double LEVEL_TOLERANCE = 1e-4;

    private static ChannelAnalysis analysis(Waveform waveform) throws Exception {
        return WaveformAnalyzer.analyze(
                waveform, AnalysisSettings.forResistance(4).withFrequencyHz(1000));
    }

    @Test
    void aWholeSessionGivesTheSineThatWasFed() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(SimulatedBench.with(simulated.settings(), "oscilloscope.attenuation", "2"))) {
            assertEquals(
                    Set.of(
                            Ability.TONE,
                            Ability.WAVEFORM,
                            Ability.SET_SUPPLY_VOLTS,
                            Ability.CUT_SUPPLY,
                            Ability.SUPPLY_VOLTS,
                            Ability.SUPPLY_AMPS,
                            Ability.CASE_CELSIUS),
                    bench.abilities());
            assertFalse(simulated.supplyOn());
            bench.connect(Mode.STEREO, subject(Mode.STEREO).load());
            bench.setSupplyVolts(14.4);
            assertTrue(simulated.supplyOn());
            // The project's supply limits at 40 A; nothing else was set.
            assertEquals("40", simulated.value("supply", "SOURce:CURRent:LEVel:IMMediate:AMPLitude", ""));
            bench.feed(Feed.Tone.of(1000, -6));
            Acquisition acquisition = bench.acquire(0.1);
            // Closed form: 1 V RMS at 0 dB, 6 dB below, times the gain, times the attenuation that is undone.
            double inputVoltsRms = Math.pow(10, -6 / 20.0);
            double[] gains = {SimulatedBench.FIRST_GAIN, SimulatedBench.SECOND_GAIN};
            assertEquals(2, acquisition.output().channels().size());
            for (int i = 0; i < 2; i++) {
                ChannelAnalysis channel =
                        analysis(acquisition.output().channels().get(i));
                double expected = 2 * Math.abs(gains[i]) * inputVoltsRms;
                assertEquals(1000, channel.frequencyHz(), 1000 * FREQUENCY_TOLERANCE);
                assertEquals(expected, channel.fundamentalVoltsRms(), expected * LEVEL_TOLERANCE);
                // An ideal converter's error is its step over sqrt 12 (IEEE Std 1057); half the sample rate is 100 kHz,
                // of which
                // 20 kHz count. The tones' samples repeat, so the error is no noise and may differ by a factor.
                double step = acquisition.voltsPerFullScale().get(0) / 32768;
                double floor = step / Math.sqrt(12) / expected;
                assertTrue(channel.thdPlusNoiseRRatio() < 3 * floor, channel.thdPlusNoiseRRatio() + " " + floor);
            }
            // 20 V RMS at -6 dB have a peak of 14.2 V at the oscilloscope: the range of 20 V, doubled by the
            // attenuation.
            assertEquals(40, acquisition.voltsPerFullScale().get(0), 0);
            assertEquals(0.1, acquisition.output().channels().get(0).durationSeconds(), 1e-9);
            Observation during = acquisition.during();
            double terminalVolts = 14.4 - SimulatedBench.SUPPLY_AMPS * SimulatedBench.LEAD_OHMS;
            assertEquals(terminalVolts, during.supplyVolts().orElseThrow(), 1e-9);
            assertEquals(2.5, during.supplyAmps().orElseThrow(), 1e-9);
            assertEquals(41.5, during.caseCelsius().orElseThrow(), 1e-9);
            assertTrue(during.ambientCelsius().isEmpty());
            bench.feed(new Feed.Silence());
            assertFalse(simulated.generatorOn());
        }
    }

    @Test
    void findsTheRangeForEachLevelAndNeverReturnsACutOffRecordThatFitsAnother() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(simulated.settings())) {
            bench.setSupplyVolts(12);
            double[] drivesDb = {-60, -1, -40, 0, -20, -21, -3};
            for (double driveDb : drivesDb) {
                bench.feed(Feed.Tone.of(1000, driveDb));
                Acquisition acquisition = bench.acquire(0.05);
                double expected = SimulatedBench.FIRST_GAIN * Math.pow(10, driveDb / 20);
                ChannelAnalysis first = analysis(acquisition.output().channels().get(0));
                assertEquals(expected, first.fundamentalVoltsRms(), expected * 1e-3, driveDb + " dB");
                double fill = expected
                        * Math.sqrt(2)
                        / acquisition.voltsPerFullScale().get(0);
                assertTrue(fill < 0.97, driveDb + " dB: " + fill);
                // The shipped ranges rise by at most 2.5, and one is left at 0.85 of the next lower at the latest.
                assertTrue(
                        fill > 0.85 / 2.5 - 1e-3
                                || acquisition.voltsPerFullScale().get(0) <= 0.1,
                        driveDb + " dB: " + fill);
            }
        }
    }

    @Test
    void saysInWhatItClippedWhenNoRangeIsLargeEnough() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(SimulatedBench.with(simulated.settings(), "oscilloscope.ranges", "1,5"))) {
            bench.setSupplyVolts(12);
            bench.feed(Feed.Tone.of(1000, 0));
            Acquisition acquisition = bench.acquire(0.01);
            assertEquals(5, acquisition.voltsPerFullScale().get(0), 0);
            assertEquals(5, analysis(acquisition.output().channels().get(0)).outputVoltsPeak(), 1e-3);
        }
    }

    @Test
    void aBridgedOutputIsTheDifferenceAndTheInputIsRecordedWithIt() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(
                        SimulatedBench.with(
                                simulated.settings(),
                                "oscilloscope.commands",
                                "oscilloscope-float",
                                "oscilloscope.inputChannel",
                                "3"),
                        Mode.BRIDGED)) {
            assertTrue(bench.abilities().contains(Ability.INPUT_WAVEFORM));
            bench.setSupplyVolts(14);
            bench.feed(Feed.Tone.of(1000, -20));
            Acquisition acquisition = bench.acquire(0.05);
            assertEquals(1, acquisition.output().channels().size());
            // Gains of 20 and -10, so the difference is 30 times the input of 0.1 V RMS.
            assertEquals(3, analysis(acquisition.output().channels().get(0)).fundamentalVoltsRms(), 3e-4);
            ChannelAnalysis input =
                    analysis(acquisition.input().orElseThrow().channels().get(0));
            assertEquals(0.1, input.fundamentalVoltsRms(), 1e-5);
            // Samples of 32-bit floating point: 2^-24 of each, far below any converter.
            assertTrue(input.thdPlusNoiseRRatio() < 1e-6);
        }
    }

    @Test
    void burstsHaveTheLevelsThatWereAskedFor() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(SimulatedBench.with(
                        simulated.settings(),
                        "generator.commands",
                        "generator-list-burst",
                        "generator.outputs",
                        "1,2"))) {
            assertTrue(bench.abilities().containsAll(Set.of(Ability.TONE_BURST, Ability.SINGLE_CHANNEL)));
            bench.setSupplyVolts(14);
            bench.feed(new Feed.Burst(1000, -6, 0.02, 0.5, -20));
            Acquisition acquisition = bench.acquire(0.6);
            ChannelAnalysis first = analysis(acquisition.output().channels().get(0));
            assertTrue(first.burst().isPresent());
            double expected = SimulatedBench.FIRST_GAIN * Math.pow(10, -6 / 20.0);
            assertEquals(expected, first.fundamentalVoltsRms(), expected * 1e-3);
            assertEquals("0.02,0.48", simulated.value("generator", "SOURce2:LIST:DWELl", ""));
            bench.feed(new Feed.Tone(1000, -20, OptionalInt.of(1)));
            assertEquals("OFF", simulated.value("generator", "OUTPut1:STATe", ""));
            assertEquals("ON", simulated.value("generator", "OUTPut2:STATe", ""));
            assertEquals("FIXed", simulated.value("generator", "SOURce2:VOLTage:MODE", ""));
            assertTrue(refusal(() -> bench.feed(new Feed.Tone(1000, -20, OptionalInt.of(2))))
                    .contains("2 outputs"));
        }
    }

    @Test
    void refusesALevelBetweenBurstsThatPulseModulationCannotGive() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(
                        SimulatedBench.with(simulated.settings(), "generator.commands", "generator-pulse-burst"))) {
            assertTrue(refusal(() -> bench.feed(new Feed.Burst(1000, -6, 0.02, 0.5, -20)))
                    .contains("silent between"));
            bench.feed(new Feed.Burst(1000, -6, 0.02, 0.5, -100));
            assertEquals("0.5", simulated.value("generator", "SOURce1:PULSe:PERiod", ""));
        }
    }

    @Test
    void refusesWhatItHasNoInstrumentFor() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(Map.of(
                        "voltmeter.address", simulated.meter.address().toString(),
                        "ammeter.address", simulated.meter.address().toString(),
                        "ammeter.shuntOhms", "0.001"))) {
            assertEquals(Set.of(Ability.SUPPLY_VOLTS, Ability.SUPPLY_AMPS), bench.abilities());
            assertEquals(1, simulated.meter.links());
            assertTrue(refusal(() -> bench.feed(Feed.Tone.of(1000, 0))).contains("a generator has no address"));
            bench.feed(new Feed.Silence());
            assertTrue(refusal(() -> bench.setSupplyVolts(12)).contains("a supply has no address"));
            assertTrue(refusal(() -> bench.acquire(0.1)).contains("an oscilloscope has no address"));
            assertEquals(0, bench.observe().supplyAmps().orElseThrow(), 0);
            bench.standDown();
        }
    }

    @Test
    void connectsNoOtherLoadUnlessSomebodyDoesItInTime() throws Exception {
        Subject subject = subject(Mode.STEREO);
        BenchLoad other = subject.project().load("8ohm").orElseThrow();
        try (SimulatedBench simulated = new SimulatedBench()) {
            try (Bench bench = open(simulated.settings())) {
                bench.setSupplyVolts(12);
                bench.feed(Feed.Tone.of(1000, -20));
                assertTrue(simulated.generatorOn());
                String message = refusal(() -> bench.connect(Mode.SINGLE, other));
                assertTrue(message.contains("\"8ohm\" (one channel)") && message.contains("by hand"), message);
                assertFalse(simulated.generatorOn());
            }
            try (Bench bench = open(SimulatedBench.with(simulated.settings(), "load.changedInTime", "true"))) {
                assertTrue(bench.abilities().contains(Ability.SELECT_LOAD));
                bench.connect(Mode.SINGLE, other);
                assertEquals(1, bench.acquire(0.01).output().channels().size());
            }
        }
    }

    @Test
    void keepsToTheLimitsOfSupplyAndGenerator() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(simulated.settings())) {
            // The project's supply goes up to 15 V, the setting to 16 V.
            assertTrue(refusal(() -> bench.setSupplyVolts(15.1)).contains("15 V that the bench is limited to"));
            assertFalse(simulated.supplyOn());
            // 1 V RMS at full output: a peak of sqrt 2.
            assertEquals("1.414214", simulated.value("generator", "SOURce:VOLTage:LIMit:AMPLitude", ""));
            assertEquals("ON", simulated.value("generator", "SOURce:VOLTage:LIMit:STATe", ""));
            String message = refusal(() -> bench.feed(Feed.Tone.of(2e6, 0)));
            assertTrue(message.contains("-222 \"Data out of range\"") && message.contains("[set sine]"), message);
        }
    }

    @Test
    void saysWhatIsMissingOrTooLongInARecord() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench()) {
            Map<String, String> one = SimulatedBench.with(simulated.settings(), "oscilloscope.channels", "1");
            try (Bench bench = open(one)) {
                assertTrue(refusal(() -> bench.acquire(0.1)).contains("2 are needed in stereo mode"));
            }
            try (Bench bench = open(one, Mode.BRIDGED)) {
                assertTrue(refusal(() -> bench.acquire(0.1)).contains("differential probe"));
            }
            try (Bench bench = open(simulated.settings())) {
                assertTrue(refusal(() -> bench.acquire(100)).contains("more than the 1000000 samples"));
            }
        }
    }

    @Test
    void describesItself() throws Exception {
        assertEquals("org.ohmstead.measure.scpi.bench", DRIVER.info().id());
        assertEquals(
                Optional.empty(),
                DRIVER.info().settings().stream()
                        .filter(s -> s.help().isBlank())
                        .findAny());
        // What is kept with a reading is taken back as it was.
        Settings settings = Settings.of(DRIVER.info().settings(), Map.of("supply.mostVolts", "15.5 V"));
        assertEquals(settings, Settings.of(DRIVER.info().settings(), settings.texts()));
    }

    @Test
    void recordsAsTextToo() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(
                        SimulatedBench.with(simulated.settings(), "oscilloscope.commands", "oscilloscope-text"),
                        Mode.SINGLE)) {
            bench.setSupplyVolts(12);
            bench.feed(Feed.Tone.of(1000, -20));
            // More than the longest line of any other answer: 80,000 numbers of 14 characters.
            Acquisition acquisition = bench.acquire(0.4);
            assertEquals(2, analysis(acquisition.output().channels().get(0)).fundamentalVoltsRms(), 2e-4);
            assertEquals(5, acquisition.voltsPerFullScale().get(0), 0);
        }
    }
}
