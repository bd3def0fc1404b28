// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Spectrum;
import org.ohmstead.signal.Waveforms.BurstPattern;
import org.ohmstead.signal.Window;

class StimulusTest {
    private static final int RATE = 48_000;

    private static double[] all(Stimulus stimulus) {
        double[] samples = new double[(int) stimulus.frames()];
        stimulus.read(0, samples, samples.length);
        return samples;
    }

    private static double rms(double[] samples, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += samples[i] * samples[i];
        }
        return Math.sqrt(sum / (to - from));
    }

    private static double peak(double[] samples) {
        double peak = 0;
        for (double sample : samples) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return peak;
    }

    /** AES17: 0 dBFS is the RMS value of a sine whose peak reaches full scale. */
    private static double dbfs(double rms) {
        return 20 * Math.log10(rms * Math.sqrt(2));
    }

    private static void assertFactsHold(Stimulus stimulus, double toleranceDb) {
        double[] samples = all(stimulus);
        assertEquals(stimulus.facts().rmsDbfs(), dbfs(rms(samples, 0, samples.length)), toleranceDb);
        assertEquals(stimulus.facts().peakDbfs(), 20 * Math.log10(peak(samples)), toleranceDb);
    }

    @Test
    void aSineHasItsLevelAndWholeCycles() {
        Stimulus sine = Stimulus.of(new TestSignal.Sine(1000, -10, 1), RATE, true);
        assertFactsHold(sine, 1e-9);
        assertEquals(-10, sine.facts().rmsDbfs());
        assertTrue(sine.facts().seamless());
        assertTrue(sine.remarks().isEmpty());
        // 997.3 Hz in a second are 997 whole cycles.
        assertEquals(
                997,
                Stimulus.of(new TestSignal.Sine(997.3, -10, 1), RATE, true)
                        .facts()
                        .frequenciesHz()
                        .get(0),
                1e-9);
        Stimulus loose = Stimulus.of(new TestSignal.Sine(997.3, -10, 1), RATE, false);
        assertEquals(997.3, loose.facts().frequenciesHz().get(0));
        assertFalse(loose.facts().seamless());
        assertEquals("notSeamless", loose.remarks().get(0).key());
    }

    @Test
    void anEighthOfThePowerIsNineDecibelsLower() {
        // Closed form: 10 log10(1/8) = -9.030900 dB.
        Stimulus warm = Stimulus.of(new TestSignal.WarmUp(1000, -10, 1), RATE, true);
        assertEquals(-19.030900, warm.facts().rmsDbfs(), 1e-6);
        double[] samples = all(warm);
        double rated = Math.pow(10, -10 / 20.0) / Math.sqrt(2);
        assertEquals(1 / 8.0, Math.pow(rms(samples, 0, samples.length) / rated, 2), 1e-9);
    }

    @Test
    void burstsHaveTheCrestFactorAndMeanPowerOfTheClosedForm() {
        Stimulus bursts = Stimulus.of(new TestSignal.ToneBursts(1000, 0, TestSignal.ToneBursts.USUAL, 5), RATE, true);
        double[] samples = all(bursts);
        double rms = rms(samples, 0, samples.length);
        // Closed form for D = 0.04 and -20 dB: mean = D + (1 - D) 0.01 = 0.0496 of the burst's power, crest factor =
        // root of 2 / mean.
        assertEquals(6.350006, peak(samples) / rms, 1e-6);
        assertEquals(16.05548, bursts.facts().crestFactorDb(), 1e-5);
        assertEquals(-13.04518, bursts.facts().rmsDbfs(), 1e-5);
        assertEquals(0.2227106, rms / rms(samples, 0, 960), 1e-7);
        assertTrue(bursts.facts().seamless());
        assertTrue(bursts.remarks().isEmpty());
    }

    @Test
    void aBurstWithoutAWholeCycleIsWarnedOf() {
        // 30 Hz for 20 ms are 0.6 cycles.
        Stimulus low = Stimulus.of(new TestSignal.ToneBursts(30, -10, TestSignal.ToneBursts.USUAL, 5), RATE, true);
        assertEquals("burstShort", low.remarks().get(0).key());
        assertEquals(30, low.facts().frequenciesHz().get(0), 1e-9);
        String sentence = low.remarks().get(0).sentence(Locale.ENGLISH);
        assertTrue(sentence.contains("0.6 of a cycle of 30 Hz") && sentence.contains("33.3 ms"), sentence);
        String german = low.remarks().get(0).sentence(Locale.GERMAN);
        assertTrue(german.contains("0,6 einer Schwingung"), german);
        // 75 Hz for 20 ms are one and a half.
        Stimulus half = Stimulus.of(new TestSignal.ToneBursts(75, -10, TestSignal.ToneBursts.USUAL, 5), RATE, false);
        assertEquals("burstParts", half.remarks().get(0).key());
        // 1003 Hz is close enough to 1000 Hz to be moved there.
        Stimulus near = Stimulus.of(new TestSignal.ToneBursts(1003, -10, TestSignal.ToneBursts.USUAL, 5), RATE, true);
        assertEquals(1000, near.facts().frequenciesHz().get(0), 1e-9);
        assertTrue(near.remarks().isEmpty());
    }

    @Test
    void burstsMayBeOffBetween() {
        BurstPattern off = new BurstPattern(0.01, 0.1, 0, 0);
        double[] samples = all(Stimulus.of(new TestSignal.ToneBursts(500, -6, off, 1), RATE, true));
        assertEquals(0, rms(samples, 480, 4800));
        assertEquals(-6, dbfs(rms(samples, 4800, 5280)), 1e-9);
    }

    @Test
    void evenlySpacedTonesHaveALowCrestFactor() {
        List<TestSignal.Tone> tones = new ArrayList<>();
        for (int k = 1; k <= 32; k++) {
            tones.add(new TestSignal.Tone(100 * k, 0));
        }
        Stimulus many = Stimulus.of(new TestSignal.MultiTone(tones, -20, 1), RATE, true);
        assertFactsHold(many, 1e-9);
        assertEquals(-20, many.facts().rmsDbfs());
        // Schroeder 1970: peak factors of about 1.7 (4.6 dB); all phases equal would give root of 2 * 32 = 8 (18.06
        // dB).
        assertTrue(
                many.facts().crestFactorDb() < 5.2,
                "crest factor " + many.facts().crestFactorDb());
        assertTrue(many.facts().seamless());
    }

    @Test
    void octavesHaveALowerCrestFactorThanWithEqualPhases() {
        List<TestSignal.Tone> tones = new ArrayList<>();
        for (double hertz = 100; hertz < 20_000; hertz *= 2) {
            tones.add(new TestSignal.Tone(hertz, 0));
        }
        Stimulus octaves = Stimulus.of(new TestSignal.MultiTone(tones, -20, 1), RATE, true);
        assertFactsHold(octaves, 1e-9);
        // Cosines of equal phase meet: root of 2 * 8 = 4 (12.04 dB).
        assertEquals(8, tones.size());
        assertTrue(
                octaves.facts().crestFactorDb() < 9.5,
                "crest factor " + octaves.facts().crestFactorDb());
    }

    @Test
    void tonesKeepTheirRelativeLevels() {
        List<TestSignal.Tone> tones = List.of(new TestSignal.Tone(1000, 0), new TestSignal.Tone(2000, -6));
        Stimulus two = Stimulus.of(new TestSignal.MultiTone(tones, -10, 1), RATE, true);
        var spectrum = Spectrum.of(two.waveform(0, RATE), Window.RECTANGULAR);
        assertEquals(-6, 20 * Math.log10(spectrum.voltsRmsAt(2000) / spectrum.voltsRmsAt(1000)), 1e-9);
    }

    @Test
    void twoTonesReachThePeakOfTheSineOfTheirLevel() {
        Stimulus pair = Stimulus.of(new TestSignal.TwoTone(60, 7000, 4, -6, 1), RATE, true);
        double[] samples = all(pair);
        // Closed form: amplitudes 0.8 and 0.2 of the peak; RMS of both = peak times root of (0.64 + 0.04) / 2.
        double wanted = Math.pow(10, -6 / 20.0);
        assertEquals(wanted * Math.sqrt(0.34), rms(samples, 0, samples.length), 1e-9);
        assertTrue(peak(samples) <= wanted && peak(samples) > 0.995 * wanted);
        assertEquals(20 * Math.log10(Math.sqrt(0.68)) - 6, pair.facts().rmsDbfs(), 1e-9);
    }

    @Test
    void aSteppedSweepGoesOnWithoutAStepOfPhase() {
        Stimulus steps = Stimulus.of(new TestSignal.SteppedSweep(20, 20_000, 3, 0.5, -20), RATE, true);
        // Ten octaves less a little, thirds of an octave: 31 frequencies, as the nominal ones from 20 Hz to 20 kHz.
        assertEquals(31, steps.facts().frequenciesHz().size());
        assertFactsHold(steps, 1e-3);
        assertTrue(steps.facts().seamless());
        Stimulus loose = Stimulus.of(new TestSignal.SteppedSweep(100, 800, 1, 0.3331, -20), RATE, false);
        double[] samples = all(loose);
        double steepest = 0;
        for (int i = 1; i < samples.length; i++) {
            steepest = Math.max(steepest, Math.abs(samples[i] - samples[i - 1]));
        }
        assertTrue(steepest <= 0.1 * 2 * Math.PI * 800 / RATE, "steepest " + steepest);
    }

    @Test
    void theSweepIsFarinasFormulaBetweenTheFades() {
        TestSignal.LogSweep sweep = new TestSignal.LogSweep(20, 20_000, -6, 2, 0.05, 0.02);
        double[] samples = all(Stimulus.of(sweep, RATE, true));
        double natural = Math.log(1000);
        double peak = Math.pow(10, -6 / 20.0);
        for (int i = 2400; i < 2 * RATE - 960; i += 997) {
            double t = i / (double) RATE;
            // Farina 2000, equation 9.
            double phase = 2 * Math.PI * 20 * 2 / natural * (Math.exp(t / 2 * natural) - 1);
            assertEquals(peak * Math.sin(phase), samples[i], 1e-9);
        }
        assertEquals(0, samples[0]);
        assertEquals(Stimulus.of(sweep, RATE, true).facts().rmsDbfs(), dbfs(rms(samples, 0, samples.length)), 0.01);
    }

    @ParameterizedTest
    @CsvSource({"12.04", "9", "7", "6"})
    void pinkNoiseHasItsCrestFactorAndSlope(double crestDb) {
        Stimulus noise = Stimulus.of(new TestSignal.PinkNoise(-20, crestDb, 20, 20_000, 7, 12), RATE, true);
        double[] samples = all(noise);
        assertEquals(-20, dbfs(rms(samples, 0, samples.length)), 1e-6);
        assertEquals(crestDb, noise.facts().crestFactorDb(), 0.02);
        assertFactsHold(noise, 1e-6);
        assertTrue(noise.facts().seamless());
        // Pink: the power of an octave is the same in each; the lines are 48000 / 2^18 Hz apart.
        var spectrum = Spectrum.of(noise.waveform(0, NoiseSource.LONGEST_PERIOD), Window.RECTANGULAR);
        double first = octave(spectrum, 31.25);
        for (double hertz = 62.5; hertz < 16_000; hertz *= 2) {
            assertEquals(0, 20 * Math.log10(octave(spectrum, hertz) / first), 0.1);
        }
    }

    private static double octave(Spectrum spectrum, double middleHz) {
        double root = Math.sqrt(2);
        return spectrum.bandVoltsRms(middleHz / root, middleHz * root, FrequencyWeighting.Z);
    }

    @Test
    void theSameSeedGivesTheSameNoiseAndAnotherAnother() {
        TestSignal.PinkNoise noise = new TestSignal.PinkNoise(-20, 12, 20, 20_000, 7, 1);
        double[] one = all(Stimulus.of(noise, RATE, true));
        assertArrayEquals(one, all(Stimulus.of(noise, RATE, true)));
        double[] other = all(Stimulus.of(new TestSignal.PinkNoise(-20, 12, 20, 20_000, 8, 1), RATE, true));
        double product = 0;
        for (int i = 0; i < one.length; i++) {
            product += one[i] * other[i];
        }
        assertEquals(0, product / one.length / rms(one, 0, one.length) / rms(other, 0, one.length), 0.1);
    }

    @ParameterizedTest
    @CsvSource({"0,1000", "1,1023", "1000,3000", "47000,1000"})
    void anyPartIsThatOfTheWhole(int from, int count) {
        for (TestSignal signal : List.of(
                new TestSignal.Sine(997, -1, 1),
                new TestSignal.ToneBursts(1000, -1, new BurstPattern(0.01, 0.1, 0.1, 0), 1),
                new TestSignal.LogSweep(20, 20_000, -1, 1, 0.1, 0.1),
                new TestSignal.PinkNoise(-20, 12, 20, 20_000, 1, 1))) {
            Stimulus stimulus = Stimulus.of(signal, RATE, true);
            double[] part = new double[count];
            stimulus.read(from, part, count);
            double[] whole = all(stimulus);
            for (int i = 0; i < count; i++) {
                assertEquals(whole[from + i], part[i], signal.toString());
            }
        }
    }

    @Test
    void aToneIsAsGoodAfterHoursAsAtFirst() {
        Stimulus hours = Stimulus.of(new TestSignal.Sine(19_997, -1, 4 * 3600), RATE, true);
        double[] late = new double[4800];
        // Whole seconds of a whole frequency: the same samples again.
        hours.read(14_000L * RATE, late, late.length);
        double[] early = new double[4800];
        hours.read(0, early, early.length);
        assertArrayEquals(early, late, 1e-9);
    }

    @Test
    void whatReachesBeyondFullScaleIsNotMade() {
        List<TestSignal.Tone> tones = List.of(new TestSignal.Tone(1000, 0), new TestSignal.Tone(2000, 0));
        Stimulus loud = Stimulus.of(new TestSignal.MultiTone(tones, 0, 1), RATE, true);
        assertFalse(loud.usable());
        assertEquals("overFullScale", loud.remarks().get(0).key());
        TestSignal high = new TestSignal.Sine(24_000, -1, 1);
        assertTrue(Stimulus.whyNot(high, RATE).orElseThrow().prevents());
        assertThrows(IllegalArgumentException.class, () -> Stimulus.of(high, RATE, true));
        assertTrue(Stimulus.whyNot(high, 96_000).isEmpty());
    }

    @Test
    void aGainOverlapLowersTheLevel() {
        assertEquals(-13, new TestSignal.Sine(1000, -3, 1).lowered(10).levelDbfs());
        assertThrows(IllegalArgumentException.class, () -> new TestSignal.Sine(1000, -3, 1).lowered(-1));
        assertThrows(IllegalArgumentException.class, () -> new TestSignal.Sine(1000, 0.1, 1));
    }
}
