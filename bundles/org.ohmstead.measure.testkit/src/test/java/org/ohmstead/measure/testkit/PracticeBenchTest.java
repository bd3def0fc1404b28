// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.SineFit;
import org.ohmstead.signal.Waveform;

/** The practice bench gives what its formula says. */
class PracticeBenchTest {
    /** Sums of sines over whole cycles are exact but for rounding. */
    private static final double RELATIVE_TOLERANCE = 1e-9;

    private static final double GAIN = 20;
    private static final double SHARE = 4 / 4.02;

    private final Subject subject = PracticeSubjects.stereo();
    private final PracticeAmplifier clean =
            PracticeAmplifier.usual().withHum(50, 0).withNoiseVoltsRms(0).withOffsetVolts(0);

    private PracticeBench open(PracticeAmplifier amplifier) throws MeasurementException, InterruptedException {
        PracticeBench bench = new PracticeBench(subject, amplifier);
        bench.connect(subject.step().mode(), subject.load());
        bench.setSupplyVolts(14.4);
        return bench;
    }

    private static double peak(Waveform waveform, double frequencyHz) {
        return SineFit.threeParameter(waveform.toArray(), waveform.sampleRateHz(), frequencyHz)
                .amplitudeVolts();
    }

    /** Closed form: 1 V at -20 dB, times the gain, divided by 4 ohms and 20 mohm. */
    @Test
    void amplifiesATone() throws Exception {
        try (PracticeBench bench = open(clean)) {
            bench.feed(Feed.Tone.of(1000, -20));
            Acquisition acquisition = bench.acquire(0.1);
            double expected = Math.sqrt(2) * 0.1 * GAIN * SHARE;
            for (Waveform channel : acquisition.output().channels()) {
                assertEquals(expected, peak(channel, 1000), RELATIVE_TOLERANCE * expected);
            }
        }
    }

    /** Closed form of a sine clipped hard at a share s of its peak: fundamental 2/pi (asin s + s sqrt(1 - s^2)) of the peak. */
    @Test
    void clipsAtTheSupply() throws Exception {
        try (PracticeBench bench = open(clean)) {
            bench.feed(Feed.Tone.of(1000, 0));
            Waveform output = bench.acquire(1).output().channels().get(0);
            double peakVolts = Math.sqrt(2) * GAIN;
            double share = 13.4 / peakVolts;
            double expected =
                    SHARE * peakVolts * 2 / Math.PI * (Math.asin(share) + share * Math.sqrt(1 - share * share));
            // 48 samples of a cycle alias the 47th and 49th harmonic into the fundamental.
            assertEquals(expected, peak(output, 1000), 2e-3 * expected);
            assertEquals(13.4 * SHARE, Arrays.stream(output.toArray()).max().orElseThrow(), 1e-12);
        }
    }

    @Test
    void bridgesWithTwiceTheOutput() throws Exception {
        try (PracticeBench bench = open(clean)) {
            bench.connect(Mode.BRIDGED, subject.load());
            bench.feed(Feed.Tone.of(1000, -20));
            Acquisition acquisition = bench.acquire(0.1);
            assertEquals(1, acquisition.output().channels().size());
            double expected = 2 * Math.sqrt(2) * 0.1 * GAIN * 4 / 4.04;
            assertEquals(expected, peak(acquisition.output().channels().get(0), 1000), RELATIVE_TOLERANCE * expected);
        }
    }

    @Test
    void addsHumAndOffset() throws Exception {
        try (PracticeBench bench = open(clean.withHum(100, 0.01).withOffsetVolts(0.02))) {
            Waveform output = bench.acquire(0.1).output().channels().get(1);
            SineFit fit = SineFit.threeParameter(output.toArray(), output.sampleRateHz(), 100);
            assertEquals(Math.sqrt(2) * 0.01 * SHARE, fit.amplitudeVolts(), 1e-10);
            assertEquals(0.02 * SHARE, fit.offsetVolts(), 1e-10);
        }
    }

    @Test
    void feedsOneChannelAlone() throws Exception {
        try (PracticeBench bench = open(clean)) {
            bench.feed(new Feed.Tone(1000, -20, OptionalInt.of(1)));
            Acquisition acquisition = bench.acquire(0.1);
            double fed = peak(acquisition.output().channels().get(1), 1000);
            double other = peak(acquisition.output().channels().get(0), 1000);
            assertEquals(0.001, other / fed, 1e-9);
        }
    }

    /** Power into both loads over efficiency and supply volts, beside the idle current. */
    @Test
    void drawsWhatItDelivers() throws Exception {
        try (PracticeBench bench = open(clean)) {
            bench.feed(Feed.Tone.of(1000, -20));
            Observation seen = bench.observe();
            double channelWatts = Math.pow(0.1 * GAIN * SHARE, 2) / 4;
            assertEquals(0.8 + 2 * channelWatts / 0.7 / 14.4, seen.supplyAmps().orElseThrow(), 1e-6);
            assertEquals(14.4, seen.supplyVolts().orElseThrow());
        }
    }

    @Test
    void sameCallsGiveTheSame() throws Exception {
        try (PracticeBench one = open(PracticeAmplifier.usual());
                PracticeBench other = open(PracticeAmplifier.usual())) {
            one.feed(new Feed.Burst(1000, -6, 0.02, 0.05, -20));
            other.feed(new Feed.Burst(1000, -6, 0.02, 0.05, -20));
            assertArrayEquals(
                    one.acquire(0.2).output().channels().get(0).toArray(),
                    other.acquire(0.2).output().channels().get(0).toArray());
        }
    }

    @Test
    void refusesARecordingThatIsTooLong() throws Exception {
        try (PracticeBench bench = open(clean)) {
            assertThrows(MeasurementException.class, () -> bench.acquire(PracticeBench.LONGEST_SECONDS + 1));
            assertThrows(IllegalArgumentException.class, () -> bench.acquire(0));
        }
    }
}
