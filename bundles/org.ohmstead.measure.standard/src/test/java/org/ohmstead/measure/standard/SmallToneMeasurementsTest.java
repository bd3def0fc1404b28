// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.FrequencyWeighting;

class SmallToneMeasurementsTest {
    private static final Subject SUBJECT =
            TestBench.subject(Mode.STEREO, TestBench.thd(0.01), TestBench.rating(4, 100));
    private static final String[] IDEAL = {"ideal", "true", "clipVolts", "40", "gainDb", "26", "sourceVolts", "4"};

    private static MeasurementResult run(Measurement measurement, String[] benchSettings, String... settings)
            throws Exception {
        try (Bench bench = TestBench.open(SUBJECT, benchSettings)) {
            return TestBench.run(measurement, SUBJECT, bench, new TestBench.Heard(), settings);
        }
    }

    /** sqrt(P R) / gain: 2 V and 20 V over 10^(26/20). */
    @Test
    void findsGainAndSensitivity() throws Exception {
        MeasurementResult result = run(new GainAndSensitivity(), TestBench.with(IDEAL, "mismatchDb", "0.25"));
        assertEquals(26, TestBench.figure(result, "gain", "A", ""), 1e-4);
        assertEquals(25.75, TestBench.figure(result, "gain", "B", ""), 1e-4);
        assertEquals(2 / 19.9526231, TestBench.figure(result, "sensitivity", "A", "1 W"), 1e-6);
        assertEquals(20 / 19.9526231, TestBench.figure(result, "sensitivity", "A", "rated power"), 1e-5);
        // 20 / ln 10 times (0.4 % + 5 mV of 2 V) / sqrt 3.
        Figure gain = result.figures().get(0);
        assertEquals(
                20 / Math.log(10) * 0.0065 / Math.sqrt(3),
                gain.standardUncertainty().orElseThrow(),
                1e-4);
    }

    @Test
    void findsTheDifferenceOfTheChannels() throws Exception {
        MeasurementResult result = run(new ChannelMatch(), TestBench.with(IDEAL, "mismatchDb", "0.4"));
        assertEquals(-0.4, TestBench.figure(result, "difference", "B", "100 Hz"), 1e-4);
        assertEquals(-0.4, TestBench.figure(result, "difference", "B", "10000 Hz"), 1e-4);
        assertEquals(0.4, TestBench.figure(result, "largest", "", ""), 1e-4);
        Readiness bridged = new ChannelMatch().readiness(TestBench.subject(Mode.BRIDGED, TestBench.thd(0.01)));
        assertTrue(bridged instanceof Readiness.NotApplicable);
    }

    /** First-order corners: -10 log10((1 + (f_1/f)^2) (1 + (f/f_2)^2)), less the same at 1 kHz (closed form). */
    @Test
    void findsFirstOrderCorners() throws Exception {
        MeasurementResult result =
                run(new FrequencyResponse(), TestBench.with(IDEAL, "lowCornerHz", "50", "highCornerHz", "9000"));
        assertEquals(loss(20) - loss(1000), TestBench.figure(result, "response", "A", "20 Hz"), 1e-3);
        assertEquals(loss(20_000) - loss(1000), TestBench.figure(result, "response", "B", "20000 Hz"), 2e-3);
        // Where the closed form is 3.0103 dB below 1 kHz, found by bisection; points lie a third of an octave apart.
        assertEquals(crossing(20, 1000), TestBench.figure(result, "lowCorner", "A", ""), 0.01 * 50);
        assertEquals(crossing(20_000, 1000), TestBench.figure(result, "highCorner", "A", ""), 0.01 * 9000);
        long points = result.figures().stream()
                .filter(figure -> figure.id().equals("response"))
                .count();
        assertEquals(2 * 31, points);
    }

    private static double loss(double frequencyHz) {
        double low = 50 / frequencyHz;
        double high = frequencyHz / 9000;
        return -10 * Math.log10((1 + low * low) * (1 + high * high));
    }

    private static double crossing(double outside, double inside) {
        double below = outside;
        double above = inside;
        for (int i = 0; i < 60; i++) {
            double middle = Math.sqrt(below * above);
            if (loss(middle) - loss(1000) < -10 * Math.log10(2)) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return below;
    }

    @ParameterizedTest
    @CsvSource({"55", "80"})
    void findsTheSeparation(double separationDb) throws Exception {
        MeasurementResult result = run(
                new ChannelSeparation(),
                TestBench.with(IDEAL, "separationDb", Double.toString(separationDb), "noiseVolts", "1e-5"));
        assertEquals(separationDb, TestBench.figure(result, "separation", "B", "A in B, 1000 Hz"), 0.05);
        assertEquals(separationDb, TestBench.figure(result, "separation", "A", "B in A, 100 Hz"), 0.05);
        assertEquals(separationDb, TestBench.figure(result, "worst", "", ""), 0.1);
        assertEquals(0, result.notes().size(), result.notes().toString());
    }

    @Test
    void saysThatTheSeparationIsHiddenInNoise() throws Exception {
        MeasurementResult result =
                run(new ChannelSeparation(), TestBench.with(IDEAL, "separationDb", "200", "noiseVolts", "1e-3"));
        assertTrue(
                result.notes().toString().contains("nothing can be told from noise"),
                result.notes().toString());
        assertTrue(TestBench.figure(result, "worst", "", "") > 80);
    }

    /**
     * White noise of 1 mV up to 24 kHz: what A-weighting (IEC 61672-1) leaves of it between 20 Hz and 20 kHz is the integral of its
     * square over the band. Re 1 W into 4 ohm that is 2 V over it, re 100 W it is 20 dB more.
     */
    @Test
    void findsTheWeightedNoiseOfAKnownSpectrum() throws Exception {
        MeasurementResult result =
                run(new ResidualNoise(), TestBench.with(IDEAL, "noiseVolts", "1e-3"), "recordSeconds", "4");
        double square = 0;
        for (double hz = 20.5; hz < 20_000; hz++) {
            square += Math.pow(FrequencyWeighting.A.gainRatio(hz), 2) / 24_000;
        }
        double weighted = 1e-3 * Math.sqrt(square);
        // 160 000 independent values leave about 0.3 % of chance.
        assertEquals(1e-3 * Math.sqrt(19_980 / 24_000.0), TestBench.figure(result, "noise", "A", ""), 0.01e-3);
        assertEquals(weighted, TestBench.figure(result, "weightedNoise", "B", ""), 0.015 * weighted);
        double ratioDb = 20 * Math.log10(2 / weighted);
        assertEquals(ratioDb, TestBench.figure(result, "signalToNoise", "A", "1 W"), 0.15);
        assertEquals(
                20,
                TestBench.figure(result, "signalToNoise", "A", "rated power")
                        - TestBench.figure(result, "signalToNoise", "A", "1 W"),
                1e-9);
    }

    /** V = V_open R / (R + Z) with any two loads gives back Z; the damping factor is 4 / Z (closed form). */
    @ParameterizedTest
    @CsvSource({"0.06,''", "0.06,8ohm", "0.4,8ohm"})
    void findsTheOutputResistanceByTwoLoads(double ohms, String secondLoad) throws Exception {
        MeasurementResult result = run(
                new OutputImpedance(),
                TestBench.with(IDEAL, "outputOhms", Double.toString(ohms), "noiseVolts", "1e-4"),
                "secondLoad",
                secondLoad);
        Figure found = result.figures().get(0);
        assertEquals("outputOhms", found.id());
        assertEquals(ohms, found.value(), 0.002 + 0.005 * ohms);
        assertTrue(found.standardUncertainty().orElseThrow() < 0.01);
        assertEquals(4 / found.value(), TestBench.figure(result, "dampingFactor", "A", ""), 1e-9);
    }

    /** Z_o = (V8 - V4) / (V4/4 - V8/8): 20.00 V and 19.70 V give 0.1237113 ohm (worked example). */
    @Test
    void saysThatAnOutputResistanceCannotBeToldFromNothing() throws Exception {
        MeasurementResult result =
                run(new OutputImpedance(), TestBench.with(IDEAL, "outputOhms", "0", "noiseVolts", "1e-3"));
        assertTrue(
                result.notes().get(0).contains("cannot be told from 0"),
                result.notes().toString());
        assertTrue(result.figures().stream().noneMatch(figure -> figure.id().equals("dampingFactor")));
    }

    @Test
    void refusesFrequenciesThatCannotBeRead() throws Exception {
        for (String text : new String[] {"100, x", "0.1", "100 V"}) {
            String message = assertThrows(
                            MeasurementException.class, () -> run(new ChannelMatch(), IDEAL, "frequencies", text))
                    .getMessage();
            assertTrue(message.startsWith("The setting \"frequencies\""), message);
        }
    }

    @Test
    void saysThatNothingIsFed() throws Exception {
        String message = assertThrows(
                        MeasurementException.class,
                        () -> run(new GainAndSensitivity(), new String[] {"fault", "blown fuse"}))
                .getMessage();
        assertTrue(message.startsWith("No channel shows a tone near 1000"), message);
    }
}
