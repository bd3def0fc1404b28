// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;
import org.ohmstead.signal.Waveforms.BurstPattern;

/** Files of every kind, looked at by the project's own analysis and by an independent one with NumPy and SciPy. */
class IndependentAnalysisTest {
    private static final String PYTHON = "/usr/bin/python3";
    private static final int RATE = 48_000;

    /**
     * Closed form: dither of two steps from end to end and rounding make noise of a quarter of a step squared, spread evenly up to half the rate;
     * a step is 2^-23 of full scale, a sine at full scale has half of full scale squared.
     */
    private static final double FLOOR_24_DB =
            10 * Math.log10(0.25 * Math.pow(2, -46) / 0.5 * (20_000 - 20) / (RATE / 2.0));

    private static final double NOISE_TOLERANCE_DB = 0.5;

    @TempDir
    static Path folder;

    private static final Map<String, Map<String, Double>> SEEN = new HashMap<>();

    private static final List<String> ORDERS = new ArrayList<>();
    private static final List<String> NAMES = new ArrayList<>();

    @BeforeAll
    static void letPythonLook() throws Exception {
        make("sine", new TestSignal.Sine(997, -1, 2), "tones", "1");
        make("warm", new TestSignal.WarmUp(1000, 0, 2), "tones", "1");
        make("modulation", new TestSignal.TwoTone(60, 7000, 4, -1, 2), "tones", "2");
        make("difference", new TestSignal.TwoTone(19_000, 20_000, 1, -1, 2), "tones", "2");
        make("many", new TestSignal.MultiTone(tones(), -6, 2), "tones", "9");
        make("steps", new TestSignal.SteppedSweep(20, 20_000, 3, 1, -1), "steps", "1");
        make("sweep", new TestSignal.LogSweep(20, 20_000, -1, 4, 0.05, 0.02), "sweep", "20 20000 4 0.05 0.02 -1");
        make(
                "bursts",
                new TestSignal.ToneBursts(1000, -1, new BurstPattern(0.02, 0.5, 0.1, 0), 5),
                "bursts",
                "0.02 0.5");
        make("pink", new TestSignal.PinkNoise(-12, 12, 20, 20_000, 3, 22), "pink", "20 20000");
        assumeTrue(available(), "python3-numpy and python3-scipy are not installed");
        Process process = new ProcessBuilder(PYTHON, "-B", "src/test/python/check_stimuli.py")
                .redirectErrorStream(true)
                .start();
        try (OutputStream input = process.getOutputStream()) {
            input.write(String.join("", ORDERS).getBytes(StandardCharsets.UTF_8));
        }
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), output);
        List<String> lines = output.strip().lines().toList();
        assertEquals(NAMES.size(), lines.size(), output);
        for (int i = 0; i < lines.size(); i++) {
            Map<String, Double> figures = new HashMap<>();
            for (String pair : lines.get(i).split(" ")) {
                figures.put(pair.split("=")[0], Double.parseDouble(pair.split("=")[1]));
            }
            SEEN.put(NAMES.get(i), figures);
        }
    }

    private static boolean available() throws InterruptedException {
        try {
            Process process = new ProcessBuilder(PYTHON, "-c", "import numpy, scipy.signal")
                    .redirectErrorStream(true)
                    .start();
            process.getInputStream().readAllBytes();
            return process.waitFor() == 0;
        } catch (IOException e) {
            System.getLogger("test").log(System.Logger.Level.INFO, "Python is not there", e);
            return false;
        }
    }

    private static void make(String name, TestSignal signal, String how, String numbers) throws Exception {
        Stimulus stimulus = Stimulus.of(signal, RATE, true);
        Path file = folder.resolve(name + ".wav");
        SignalFile.Written written =
                new SignalFile(stimulus, SampleFormat.INTEGER_24, ChannelUse.MONO, false, 1).write(file, ratio -> true);
        assertEquals(0, written.limited());
        ORDERS.add(how + " " + file + " " + numbers + "\n");
        NAMES.add(name);
    }

    private static List<TestSignal.Tone> tones() {
        List<TestSignal.Tone> tones = new ArrayList<>();
        for (int k = 1; k <= 9; k++) {
            tones.add(new TestSignal.Tone(1000 * k, 1 - k));
        }
        return tones;
    }

    private static double seen(String name, String figure) {
        return SEEN.get(name).get(figure);
    }

    private static Waveform read(String name) throws Exception {
        return WavFile.read(folder.resolve(name + ".wav"), new double[] {1})
                .channels()
                .get(0);
    }

    private static ChannelAnalysis analysed(Waveform wave) throws Exception {
        return WaveformAnalyzer.analyze(wave, AnalysisSettings.forResistance(1));
    }

    @Test
    void aSineIsPureToTheDither() throws Exception {
        assertEquals(997, seen("sine", "hz0"), 1e-6);
        assertEquals(-1, seen("sine", "db0"), 1e-6);
        assertEquals(Math.sqrt(2), seen("sine", "crest"), 1e-4);
        assertEquals(FLOOR_24_DB + 1, seen("sine", "rest"), NOISE_TOLERANCE_DB);
        assertTrue(seen("sine", "rest") < -138, "THD+N by NumPy: " + seen("sine", "rest") + " dB");
        ChannelAnalysis own = analysed(read("sine"));
        assertEquals(997, own.frequencyHz(), 1e-6);
        assertEquals(-1, 20 * Math.log10(own.fundamentalVoltsRms() * Math.sqrt(2)), 1e-6);
        double distortionDb = 20 * Math.log10(own.thdPlusNoiseRRatio());
        assertTrue(distortionDb < -138, "THD+N by the own analysis: " + distortionDb + " dB");
        assertEquals(seen("sine", "rest"), distortionDb, 0.1);
    }

    @Test
    void theWarmUpIsAnEighthOfThePower() throws Exception {
        assertEquals(10 * Math.log10(0.125), seen("warm", "db0"), 1e-6);
        assertEquals(FLOOR_24_DB + 9.03, seen("warm", "rest"), NOISE_TOLERANCE_DB);
        double own = analysed(read("warm")).fundamentalVoltsRms();
        assertEquals(0.125, 2 * own * own, 1e-7);
    }

    @Test
    void pairsHaveTheirLevelsAndNothingBetween() throws Exception {
        // Amplitudes 0.8 and 0.2 of the peak at -1 dBFS.
        assertEquals(60, seen("modulation", "hz0"), 1e-6);
        assertEquals(7000, seen("modulation", "hz1"), 1e-6);
        assertEquals(-1 + 20 * Math.log10(0.8), seen("modulation", "db0"), 1e-6);
        assertEquals(-1 + 20 * Math.log10(0.2), seen("modulation", "db1"), 1e-6);
        assertEquals(19_000, seen("difference", "hz0"), 1e-6);
        assertEquals(20_000, seen("difference", "hz1"), 1e-6);
        assertEquals(-1 + 20 * Math.log10(0.5), seen("difference", "db0"), 1e-6);
        assertEquals(seen("difference", "db0"), seen("difference", "db1"), 1e-6);
        for (String name : List.of("modulation", "difference")) {
            double floor = FLOOR_24_DB - seen(name, "rms");
            assertEquals(floor, seen(name, "rest"), NOISE_TOLERANCE_DB);
            assertEquals(seen(name, "rms"), Rms.dbfs(read(name)), 1e-9);
        }
    }

    @Test
    void manyTonesHaveTheirLevelsAndNothingBetween() throws Exception {
        assertEquals(-6, seen("many", "rms"), 1e-6);
        for (int k = 1; k < 9; k++) {
            assertEquals(1000 * (k + 1), seen("many", "hz" + k), 1e-6);
            assertEquals(-k, seen("many", "db" + k) - seen("many", "db0"), 1e-5);
        }
        assertEquals(FLOOR_24_DB + 6, seen("many", "rest"), NOISE_TOLERANCE_DB);
        assertEquals(seen("many", "rms"), Rms.dbfs(read("many")), 1e-9);
        assertTrue(20 * Math.log10(seen("many", "crest")) < 8);
    }

    @Test
    void stepsAreEvenlySpacedAndPure() throws Exception {
        assertEquals(31, seen("steps", "count"));
        assertEquals(20, seen("steps", "first"), 1e-6);
        assertEquals(20_000, seen("steps", "last"), 1e-6);
        assertEquals(-1, seen("steps", "low"), 1e-6);
        assertEquals(-1, seen("steps", "high"), 1e-6);
        // Whole cycles in a second round to whole hertz, up to half of one: 2.5 % at 20 Hz.
        assertEquals(1 / 3.0, seen("steps", "narrow"), 0.04);
        assertEquals(1 / 3.0, seen("steps", "wide"), 0.04);
        assertTrue(seen("steps", "rest") < -138, "THD+N by NumPy: " + seen("steps", "rest") + " dB");
        ChannelAnalysis own = analysed(read("steps").slice(17 * RATE, 18 * RATE));
        assertTrue(20 * Math.log10(own.thdPlusNoiseRRatio()) < -138);
        assertEquals(1 / 3.0 * 17, Math.log(own.frequencyHz() / 20) / Math.log(2), 0.04);
    }

    @Test
    void theSweepIsSciPysChirp() throws Exception {
        // scipy.signal.chirp, method "logarithmic": the difference is the dither, over the whole band up to half the
        // rate.
        double wholeBandDb = 10 * Math.log10((RATE / 2.0) / (20_000 - 20));
        assertEquals(FLOOR_24_DB + wholeBandDb + 1, seen("sweep", "rest"), NOISE_TOLERANCE_DB);
        assertEquals(-1, seen("sweep", "peak"), 0.01);
        assertEquals(seen("sweep", "rms"), Rms.dbfs(read("sweep")), 1e-9);
    }

    @Test
    void burstsHaveTheirTimingLevelsAndCrestFactor() throws Exception {
        assertEquals(6.350006, seen("bursts", "crest"), 1e-5);
        assertEquals(-13.04518 - 1, seen("bursts", "rms"), 1e-5);
        assertEquals(-1, seen("bursts", "on"), 1e-6);
        assertEquals(-21, seen("bursts", "low"), 1e-6);
        assertEquals(1000, seen("bursts", "hz"), 1e-6);
        assertTrue(seen("bursts", "rest") < -138, "inside a burst, by NumPy: " + seen("bursts", "rest") + " dB");
        ChannelAnalysis own = analysed(read("bursts"));
        var burst = own.burst().orElseThrow();
        assertEquals(0.02, burst.onSeconds(), 1e-4);
        assertEquals(0.5, burst.periodSeconds().orElseThrow(), 1e-6);
        assertEquals(0.0496, burst.meanPowerWatts() / burst.powerWatts(), 1e-4);
        assertEquals(Math.pow(10, -0.1) / 2, burst.powerWatts(), 1e-5);
    }

    @Test
    void pinkNoiseFallsByThreeDecibelsAnOctave() throws Exception {
        // -10 log10(2) = -3.0103 dB per octave; thirds of an octave by Welch's method.
        assertEquals(-3.0103, seen("pink", "slope"), 0.05);
        assertTrue(seen("pink", "worst") < 0.6, "worst third of an octave: " + seen("pink", "worst") + " dB");
        assertEquals(-12, seen("pink", "rms"), 1e-5);
        assertEquals(12, 20 * Math.log10(seen("pink", "crest")), 0.01);
        // What the last cut of the peaks leaves outside the band.
        assertTrue(seen("pink", "outside") < -60, "outside the band: " + seen("pink", "outside") + " dB");
        assertEquals(seen("pink", "rms"), Rms.dbfs(read("pink")), 1e-9);
    }

    /** The RMS level of a file by plain sums, to compare how both read the samples. */
    private static final class Rms {
        private Rms() {}

        static double dbfs(Waveform wave) {
            double sum = 0;
            for (int i = 0; i < wave.size(); i++) {
                sum += wave.voltsAt(i) * wave.voltsAt(i);
            }
            return 10 * Math.log10(2 * sum / wave.size());
        }
    }
}
