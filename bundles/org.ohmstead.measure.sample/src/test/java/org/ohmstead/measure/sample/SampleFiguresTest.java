// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.testkit.PracticeAmplifier;
import org.ohmstead.measure.testkit.PracticeBench;
import org.ohmstead.measure.testkit.PracticeSubjects;
import org.ohmstead.signal.SineFit;
import org.ohmstead.signal.Waveform;

/** The samples' figures against what was put in. */
class SampleFiguresTest {
    private static final double RELATIVE_TOLERANCE = 1e-9;
    /** 50 uV of white noise up to 24 kHz leave 50 uV / sqrt(48000) RMS in a fit over 1 s; eight times that is beyond chance. */
    private static final double NOISE_TOLERANCE_VOLTS = 8 * 50e-6 / Math.sqrt(48_000);

    private final Subject subject = PracticeSubjects.stereo();

    private static final class Quiet implements Progress {
        @Override
        public void at(double doneRatio, String what) {
            assertEquals(0, doneRatio);
        }

        @Override
        public void live(Figure figure) {
            throw new AssertionError("nothing is live here");
        }

        @Override
        public void recorded(Acquisition acquisition) {
            assertEquals(2, acquisition.output().channels().size());
        }

        @Override
        public void checkpoint() {
            // It may always go on.
        }
    }

    private List<Figure> hum(double humHz, double humVoltsRms, Map<String, String> given) throws Exception {
        Hum hum = new Hum();
        try (Bench bench = new PracticeBench(subject, PracticeAmplifier.usual().withHum(humHz, humVoltsRms))) {
            bench.connect(subject.step().mode(), subject.load());
            bench.setSupplyVolts(subject.step().supplyVolts());
            MeasurementResult result = hum.run(subject, Settings.of(hum.info().settings(), given), bench, new Quiet());
            return result.figures();
        }
    }

    private static double value(List<Figure> figures, String id, String channel, String at) {
        return figures.stream()
                .filter(figure -> figure.id().equals(id)
                        && figure.channel().equals(channel)
                        && figure.at().equals(at))
                .findFirst()
                .orElseThrow()
                .value();
    }

    /** The practice amplifier has 3 mV of hum at 100 Hz before 4 ohms and 20 mohm divide it. */
    @Test
    void findsTheHumThatIsThere() throws Exception {
        List<Figure> figures = hum(100, 0.003, Map.of());
        double expected = 0.003 * 4 / 4.02;
        for (String channel : List.of("A", "B")) {
            assertEquals(expected, value(figures, "hum", channel, ""), 2 * NOISE_TOLERANCE_VOLTS);
            assertEquals(expected, value(figures, "harmonic", channel, "100 Hz"), NOISE_TOLERANCE_VOLTS);
            assertEquals(0, value(figures, "harmonic", channel, "50 Hz"), NOISE_TOLERANCE_VOLTS);
        }
    }

    @Test
    void looksAtTheMainsThatIsSet() throws Exception {
        List<Figure> figures = hum(180, 0.002, Map.of("mainsHz", "60", "harmonics", "3", "seconds", "0.33"));
        assertEquals(0.002 * 4 / 4.02, value(figures, "harmonic", "B", "180 Hz"), 3 * NOISE_TOLERANCE_VOLTS);
        assertEquals(2 * (3 + 1), figures.size());
    }

    /** By hand: 10 V at -20 dB is 1 V; 10 ohms parallel to 4 ohms are 20/7 ohms, behind 10 ohms that is 2/9 of it. */
    @Test
    void dividesByHand() throws Exception {
        DividerDriver driver = new DividerDriver();
        try (Bench bench = driver.open(subject, Settings.defaults(driver.info().settings()))) {
            bench.connect(subject.step().mode(), subject.load());
            bench.feed(Feed.Tone.of(1000, -20));
            Acquisition acquisition = bench.acquire(0.1);
            for (Waveform channel : acquisition.output().channels()) {
                double amplitude = SineFit.threeParameter(channel.toArray(), channel.sampleRateHz(), 1000)
                        .amplitudeVolts();
                assertEquals(Math.sqrt(2) * 2 / 9, amplitude, RELATIVE_TOLERANCE);
            }
        }
    }
}
