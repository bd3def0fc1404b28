// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SweepPoint;

class PowerAtEndPointTest {
    /** A perfect clipper at 20 V peak: its onset into 4 ohm lies at 50 W. */
    private static final String[] CLIPPER = {"ideal", "true", "clipVolts", "20", "gainDb", "28", "sourceVolts", "2"};

    private static final PowerAtEndPoint MEASUREMENT = new PowerAtEndPoint();

    private static Reading reading(TestBench.Heard heard, Subject subject, String... benchSettings) throws Exception {
        try (Bench bench = TestBench.open(subject, benchSettings)) {
            MeasurementResult result = TestBench.run(MEASUREMENT, subject, bench, heard);
            double[] after = bench.acquire(0.01).output().channels().get(0).toArray();
            double square = 0;
            for (double volts : after) {
                square += volts * volts / after.length;
            }
            // The first level gives 0.5 V RMS, the noisiest bench here 0.1 V.
            assertTrue(square < 0.15 * 0.15, "fed " + Math.sqrt(square) + " V RMS after it ended");
            return result.power().orElseThrow();
        }
    }

    /** P / P_onset at a THD_F: 1.0078203 at 0.1 %, 1.0475059 at 1 %, 1.1118536 at 3 %, 1.2877619 at 10 % (closed form). */
    @ParameterizedTest
    @CsvSource({
        "0.01,1.0475059,0,0", "0.01,1.0475059,45,0", "0.01,1.0475059,45,0.15", "0.01,1.0475059,20,0.4",
                "0.01,1.0475059,100,0.15",
        "0.1,1.2877619,0,0", "0.1,1.2877619,55,0.15", "0.1,1.2877619,20,0.15", "0.1,1.2877619,120,0.3",
                "0.03,1.1118536,50,0.1",
        "0.001,1.0078203,50,0"
    })
    void findsTheClosedFormPowerOfAnIdealClipperInAtMostTwelveRecordings(
            double limitRatio, double powerRatio, double ratedWatts, String mismatchDb) throws Exception {
        Rating[] ratings = ratedWatts > 0 ? new Rating[] {TestBench.rating(4, ratedWatts)} : new Rating[0];
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(limitRatio), ratings);
        TestBench.Heard heard = new TestBench.Heard();
        Reading reading = reading(heard, subject, TestBench.with(CLIPPER, "mismatchDb", mismatchDb));
        for (ChannelReading channel : reading.channels()) {
            assertEquals(EndPointOutcome.REACHED, channel.outcome());
            // The issue asks for 0.2 %; 0.1 % THD is nearly a step in level, where power hardly moves.
            assertEquals(50 * powerRatio, channel.powerWatts(), 0.002 * 50 * powerRatio, describe(channel));
            assertEquals(heard.recorded.size(), channel.sweep().size());
        }
        assertTrue(heard.recorded.size() <= 12, heard.recorded.size() + " recordings");
        assertTrue(heard.checkpoints >= 2 * heard.recorded.size());
        assertEquals(heard.recorded.size(), reading.provenance().captures().size());
        assertEquals(
                Optional.of(new Specimen("M-1", "", "")), reading.provenance().specimen());
    }

    private static String describe(ChannelReading channel) {
        StringBuilder text = new StringBuilder(channel.channel());
        for (SweepPoint point : channel.sweep()) {
            text.append(String.format(
                    "%n%.3f dB %.3f W %.4f %%", point.driveDb(), point.powerWatts(), 100 * point.thdFRatio()));
        }
        return text.toString();
    }

    /** Bridged into 4 ohm each channel sees 2 ohm: twice the power that a channel has there, 2 (20^2 / 4) 1.0475059 W (closed form). */
    @Test
    void findsThePowerOfABridge() throws Exception {
        Subject subject = TestBench.subject(Mode.BRIDGED, TestBench.thd(0.01));
        Reading reading = reading(new TestBench.Heard(), subject, CLIPPER);
        assertEquals(1, reading.channels().size());
        assertEquals("A+B", reading.channels().get(0).channel());
        assertEquals(200 * 1.0475059, reading.channels().get(0).powerWatts(), 0.002 * 209);
    }

    /** The power inside a burst of a memoryless clipper is that of the steady tone. */
    @Test
    void findsThePowerInsideABurst() throws Exception {
        Subject subject = TestBench.subject(
                Mode.STEREO,
                new Stimulus.ToneBurst(1000, 0.02, 0.5, -20),
                TestBench.thd(0.01),
                TestBench.rating(4, 48));
        TestBench.Heard heard = new TestBench.Heard();
        Reading reading = reading(heard, subject, CLIPPER);
        assertEquals(50 * 1.0475059, reading.weakestChannel().powerWatts(), 0.004 * 52.4);
        assertTrue(heard.recorded.size() <= 12);
    }

    /** The onset itself lies at C^2 / 2R = 50 W. */
    @Test
    void findsTheOnsetOfClipping() throws Exception {
        Subject subject = TestBench.subject(Mode.STEREO, new EndPoint.ClippingOnset(), TestBench.rating(4, 45));
        Reading reading = reading(new TestBench.Heard(), subject, CLIPPER);
        assertEquals(50, reading.weakestChannel().powerWatts(), 0.01 * 50, describe(reading.weakestChannel()));
    }

    /** 2 V RMS at -20 dB times 28 dB: (0.2 * 25.118864)^2 / 4 W. */
    @Test
    void measuresAtALevel() throws Exception {
        Subject subject = TestBench.subject(Mode.STEREO, new EndPoint.FixedLevel(-20));
        Reading reading = reading(new TestBench.Heard(), subject, CLIPPER);
        assertEquals(EndPointOutcome.REACHED, reading.channels().get(0).outcome());
        assertEquals(Math.pow(0.2 * 25.118864, 2) / 4, reading.channels().get(0).powerWatts(), 1e-4);
    }

    /**
     * A dead zone of 0.05 V makes more than 1 % at first (0.6 % where it is 1 % of the peak; closed form), less than 1 % from about
     * 3 V peak on, and clipping ends it.
     */
    @Test
    void risesThroughADistortionThatStartsAboveTheLimit() throws Exception {
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(0.01), TestBench.rating(4, 50));
        Reading reading = reading(new TestBench.Heard(), subject, TestBench.with(CLIPPER, "crossoverVolts", "0.05"));
        ChannelReading channel = reading.channels().get(0);
        assertTrue(channel.sweep().get(0).thdFRatio() > 0.04, describe(channel));
        assertEquals(EndPointOutcome.REACHED, channel.outcome());
        assertEquals(50 * 1.0475, channel.powerWatts(), 0.01 * 52, describe(channel));
        assertTrue(
                reading.notes().toString().contains("passed more than once"),
                reading.notes().toString());
    }

    @Test
    void findsADipBetweenTwoLevelsBeyondTheLimit() throws Exception {
        // A dead zone of 0.22 V leaves 0.66 % at the onset; on the way there is nothing below 1 % up to 13 V peak.
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(0.01), TestBench.rating(4, 100));
        TestBench.Heard heard = new TestBench.Heard();
        Reading reading = reading(heard, subject, TestBench.with(CLIPPER, "crossoverVolts", "0.22"));
        ChannelReading channel = reading.channels().get(0);
        assertEquals(EndPointOutcome.REACHED, channel.outcome(), describe(channel));
        assertEquals(52, channel.powerWatts(), 1.5, describe(channel));
        assertTrue(heard.recorded.size() <= 12);
    }

    @Test
    void saysThatEveryLevelIsBeyondTheLimit() throws Exception {
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(0.001), TestBench.rating(4, 50));
        TestBench.Heard heard = new TestBench.Heard();
        Reading reading = reading(heard, subject, TestBench.with(CLIPPER, "crossoverVolts", "0.4"));
        assertEquals(EndPointOutcome.ALREADY_BEYOND, reading.channels().get(0).outcome());
        assertTrue(
                reading.notes().toString().contains("upper bound"),
                reading.notes().toString());
        assertTrue(heard.recorded.size() <= 12);
    }

    @Test
    void saysThatTheLimitIsNeverReached() throws Exception {
        // 2 V RMS times 16 dB stays below 20 V peak.
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(0.01), TestBench.rating(4, 45));
        Reading reading = reading(new TestBench.Heard(), subject, "ideal", "true", "clipVolts", "20", "gainDb", "16");
        ChannelReading channel = reading.channels().get(0);
        assertEquals(EndPointOutcome.NOT_REACHED, channel.outcome());
        assertEquals(Math.pow(2 * Math.pow(10, 16 / 20.0), 2) / 4, channel.powerWatts(), 1e-3);
        assertTrue(
                reading.notes().toString().contains("was not raised above 0.00 dB"),
                reading.notes().toString());
    }

    @Test
    void doesNotExceedThePowerLimitOfTheLoad() throws Exception {
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(0.01));
        Reading reading = reading(new TestBench.Heard(), subject, "ideal", "true", "clipVolts", "200", "gainDb", "40");
        ChannelReading channel = reading.channels().get(0);
        assertEquals(EndPointOutcome.NOT_REACHED, channel.outcome());
        assertEquals(800, channel.powerWatts(), 0.002 * 800);
    }

    /** THD + N with noise of 0.75 % of the output scatters near a limit of 1 %; the power still comes out within 1 %. */
    @Test
    void bearsNoiseNearTheLimit() throws Exception {
        EndPoint limit = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_PLUS_NOISE_R);
        Subject subject = TestBench.subject(Mode.STEREO, limit, TestBench.rating(4, 48));
        TestBench.Heard heard = new TestBench.Heard();
        Reading reading = reading(heard, subject, TestBench.with(CLIPPER, "noiseVolts", "0.1"));
        for (ChannelReading channel : reading.channels()) {
            assertEquals(EndPointOutcome.REACHED, channel.outcome(), describe(channel));
            // Where harmonics of 0.66 % to 0.75 % lie: between 1.034 and 1.038 of the onset (closed form).
            assertEquals(51.8, channel.powerWatts(), 0.5, describe(channel));
        }
        assertTrue(heard.recorded.size() <= 12);
    }

    @Test
    void endsWithASentenceWhenAChannelIsDead() throws Exception {
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(0.01), TestBench.rating(4, 90));
        for (String separationDb : List.of("400", "60")) {
            try (Bench bench = TestBench.open(
                    subject,
                    "fault",
                    "channel dead",
                    "faultChannel",
                    "1",
                    "separationDb",
                    separationDb.equals("400") ? "200" : separationDb)) {
                TestBench.Heard heard = new TestBench.Heard();
                String message = assertThrows(
                                MeasurementException.class, () -> TestBench.run(MEASUREMENT, subject, bench, heard))
                        .getMessage();
                assertTrue(message.startsWith("Channel B"), message);
                assertEquals(1, heard.recorded.size());
            }
        }
    }

    @Test
    void fallsSilentButKeepsTheSupplyWhenItFails() throws Exception {
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(0.01), TestBench.rating(4, 90));
        try (Bench bench = TestBench.open(subject, "fault", "channel dead", "meterErrors", "false")) {
            assertThrows(
                    MeasurementException.class,
                    () -> TestBench.run(MEASUREMENT, subject, bench, new TestBench.Heard()));
            Acquisition after = bench.acquire(0.01);
            assertEquals(14.4, after.during().supplyVolts().orElseThrow(), 1e-9);
            for (double volts : after.output().channels().get(1).toArray()) {
                assertEquals(0, volts, 5e-3);
            }
        }
    }

    @Test
    void obeysAStopLimitAndLeavesTheBenchSilent() throws Exception {
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(0.01), TestBench.rating(4, 45));
        for (int end = 1; end < 12; end += 3) {
            try (Bench bench = TestBench.open(subject, CLIPPER)) {
                TestBench.Heard heard = new TestBench.Heard();
                heard.endAtCheckpoint = end;
                assertThrows(InterruptedException.class, () -> TestBench.run(MEASUREMENT, subject, bench, heard));
                Acquisition after = bench.acquire(0.01);
                for (double volts : after.output().channels().get(0).toArray()) {
                    assertEquals(0, volts, 1e-3);
                }
                assertEquals(end / 2, heard.recorded.size());
            }
        }
    }

    /** Sag, soft knee, noise, heat and meter errors: what the search finds lies where a fine sweep of the same bench crosses the limit. */
    @Test
    void findsOnARealisticBenchWhatAFineSweepFinds() throws Exception {
        Subject subject =
                TestBench.subject(Mode.STEREO, TestBench.thd(0.01), TestBench.rating(4, 90), TestBench.rating(2, 165));
        TestBench.Heard heard = new TestBench.Heard();
        Reading reading = reading(heard, subject, "caseKelvinPerWatt", "0");
        double below = 0;
        double above = 0;
        try (Bench bench = TestBench.open(subject, "caseKelvinPerWatt", "0")) {
            for (double driveDb = -10; above == 0; driveDb += 0.05) {
                Subject atLevel = TestBench.subject(
                        Mode.STEREO,
                        new EndPoint.FixedLevel(driveDb),
                        TestBench.rating(4, 90),
                        TestBench.rating(2, 165));
                MeasurementResult one =
                        TestBench.run(MEASUREMENT, atLevel, bench, new TestBench.Heard(), "startDb", "0");
                ChannelReading channel = one.power().orElseThrow().channels().get(0);
                if (channel.thdFRatio() > 0.01) {
                    above = channel.powerWatts();
                } else {
                    below = channel.powerWatts();
                }
            }
        }
        double found = reading.channels().get(0).powerWatts();
        assertTrue(found > 0.998 * below && found < 1.002 * above, below + " " + found + " " + above);
        assertTrue(heard.recorded.size() <= 12);
    }
}
