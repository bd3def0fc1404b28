// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.signal.Waves.RATE_HZ;
import static org.ohmstead.signal.Waves.analyze;
import static org.ohmstead.signal.Waves.sampled;
import static org.ohmstead.signal.Waves.series;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BurstAnalysisTest {
    private static final double PEAK = 20;
    /** 20 V peak across 4 ohm. */
    private static final double BURST_WATTS = 50;

    private static Waveform pattern(double frequencyHz, double seconds, double on, double low, double delay) {
        return Waveforms.toneBurst(
                RATE_HZ,
                (int) Math.rint(seconds * RATE_HZ),
                frequencyHz,
                PEAK,
                new Waveforms.BurstPattern(on, 0.5, low, delay));
    }

    private static ChannelAnalysis measure(Waveform waveform) throws CaptureException {
        return WaveformAnalyzer.analyze(waveform, AnalysisSettings.forResistance(4));
    }

    @ParameterizedTest
    @CsvSource({
        // Mean over burst power D + (1 - D) 10^(L/10), for 1 kHz bursts (closed form).
        "0.02, 0.1, 0.0496",
        "0.02, 0, 0.0400",
        "0.05, 0.1, 0.1090",
        "0.25, 0.1, 0.5050",
        "0.25, 0, 0.5",
        "0.4, 0.1, 0.802"
    })
    void measuresPowerInsideBurstsAndOverPeriods(double on, double low, double meanRatio) throws CaptureException {
        for (double delay : new double[] {0, 0.1, 0.137, 0.4}) {
            ChannelAnalysis analysis = measure(pattern(1000, 1.7, on, low, delay));
            Burst burst = analysis.burst().orElseThrow();
            assertEquals(BURST_WATTS, burst.powerWatts(), 1e-4 * BURST_WATTS);
            assertEquals(BURST_WATTS, analysis.powerWatts(), 1e-4 * BURST_WATTS);
            assertEquals(meanRatio * BURST_WATTS, burst.meanPowerWatts(), 0.002 * meanRatio * BURST_WATTS);
            assertEquals(0.5, burst.periodSeconds().orElseThrow(), 1e-4);
            assertEquals(on, burst.onSeconds(), 1e-4);
            assertEquals(Math.round(on * 1000), burst.cycles());
            assertEquals(delay > 0 ? delay : 0.5, burst.onsetSeconds(), 1e-4);
            assertEquals(1000, analysis.frequencyHz(), 0.001);
            assertEquals(0, analysis.thdFRatio(), 1e-4);
            assertEquals(3.0103, analysis.crestFactorDb(), 0.01);
            assertFalse(analysis.clipping().clipped());
        }
    }

    @Test
    void measuresASingleBurst() throws CaptureException {
        Burst burst = measure(pattern(1000, 0.5, 0.02, 0.1, 0.2)).burst().orElseThrow();
        assertTrue(burst.periodSeconds().isEmpty());
        assertEquals(1, burst.wholeBursts());
        assertEquals(20, burst.cycles());
        assertEquals(0.2, burst.onsetSeconds(), 1e-4);
        assertEquals(BURST_WATTS, burst.powerWatts(), 1e-4 * BURST_WATTS);
        // One burst in a record of 0.5 s: 0.04 + 0.96 * 0.01 of the burst power.
        assertEquals(0.0496 * BURST_WATTS, burst.meanPowerWatts(), 0.002 * 0.0496 * BURST_WATTS);
    }

    @Test
    void evaluatesThePartOfABurstThatTheRecordHolds() throws CaptureException {
        Waveform cut = pattern(1000, 0.3, 0.1, 0.1, 0.25);
        ChannelAnalysis analysis = measure(cut);
        Burst burst = analysis.burst().orElseThrow();
        assertEquals(0, burst.wholeBursts());
        assertEquals(BURST_WATTS, burst.powerWatts(), 1e-4 * BURST_WATTS);
        assertTrue(analysis.notes().stream().anyMatch(note -> note.contains("inside the burst")));
    }

    @Test
    void measuresABurstOfOneCycleAndSaysSo() throws CaptureException {
        // 50 Hz in 20 ms is one cycle.
        ChannelAnalysis analysis = measure(pattern(50, 1.7, 0.02, 0.1, 0.1));
        Burst burst = analysis.burst().orElseThrow();
        assertEquals(1, burst.cycles());
        assertEquals(BURST_WATTS, burst.powerWatts(), 0.005 * BURST_WATTS);
        assertTrue(analysis.notes().stream().anyMatch(note -> note.contains("only 1 whole cycle,")));
    }

    @ParameterizedTest
    @CsvSource({"100, 0.02, 0.1", "100, 0.02, 0.49", "40, 0.05, 0.1", "125, 0.02, 0.137"})
    void measuresBurstsOfTwoCyclesWithSilenceBetween(double frequencyHz, double on, double delay)
            throws CaptureException {
        // The strongest component of such a record lies up to 10 % beside the tone.
        ChannelAnalysis analysis = measure(pattern(frequencyHz, 1.7, on, 0, delay));
        Burst burst = analysis.burst().orElseThrow();
        assertEquals(frequencyHz, analysis.frequencyHz(), 0.01 * frequencyHz);
        assertEquals(BURST_WATTS, burst.powerWatts(), 0.01 * BURST_WATTS);
        assertEquals(2 * on * BURST_WATTS, burst.meanPowerWatts(), 0.01 * 2 * on * BURST_WATTS);
        assertEquals(Math.floor(on * frequencyHz), burst.cycles());
    }

    @Test
    void keepsTheMeanWhenTheRecordBeginsInsideAShortBurst() throws CaptureException {
        // One cycle of the first burst is left; two cycles of 100 Hz in each period of 0.5 s: 50 W * 0.04.
        Waveform whole = Waveforms.toneBurst(8000, 6880, 100, PEAK, new Waveforms.BurstPattern(0.02, 0.5, 0, 0));
        ChannelAnalysis analysis = measure(whole.slice(80, 6880));
        Burst burst = analysis.burst().orElseThrow();
        assertEquals(0.04 * BURST_WATTS, burst.meanPowerWatts(), 0.02 * 0.04 * BURST_WATTS);
        assertEquals(0.5, burst.periodSeconds().orElseThrow(), 2e-3);
        assertFalse(analysis.clipping().clipped());
    }

    @Test
    void saysThatABurstHoldsNoWholeCycle() throws CaptureException {
        // 30 Hz in 20 ms is 0.6 of a cycle.
        ChannelAnalysis analysis = measure(pattern(30, 1.7, 0.02, 0.1, 0.1));
        assertTrue(analysis.burst().isEmpty());
        assertTrue(analysis.notes().stream().anyMatch(note -> note.contains("no whole cycle")), analysis.toString());
    }

    @Test
    void measuresBurstsThatSag() throws CaptureException {
        // The level falls in a straight line by 20 % within the burst: mean square (1 - x/5)^2 over 0..1 = 0.81333.
        double[] samples = pattern(1000, 1.7, 0.02, 0.1, 0.1).toArray();
        for (int i = 0; i < samples.length; i++) {
            double inPeriod = (i / RATE_HZ - 0.1 + 1) % 0.5;
            samples[i] *= inPeriod < 0.02 ? 1 - 0.2 * inPeriod / 0.02 : 1;
        }
        Burst burst = analyze(samples).burst().orElseThrow();
        assertEquals(0.813333 * BURST_WATTS, burst.powerWatts(), 0.002 * BURST_WATTS);
        assertEquals(20, burst.cycles());
    }

    @Test
    void findsDistortionAndClippingInsideBursts() throws CaptureException {
        double[] samples = pattern(1000, 1.2, 0.02, 0.1, 0.1).toArray();
        double[] clipped = sampled(samples.length, 1000, 0, series(Waves.clippedSeries(0.8, 19)));
        for (int i = 0; i < samples.length; i++) {
            double inPeriod = (i / RATE_HZ - 0.1 + 1) % 0.5;
            samples[i] = inPeriod < 0.02 ? PEAK * clipped[i] : samples[i];
        }
        ChannelAnalysis analysis = analyze(samples);
        // Hard limit with k = 0.8: THD_F up to order 19 is 8.97476 %, power 2 MS / A^2 of the uncut sine.
        assertEquals(0.0897476, analysis.thdFRatio(), 5e-4);
        assertEquals(2 * 0.40456443 * BURST_WATTS, analysis.powerWatts(), 0.002 * BURST_WATTS);
        assertEquals(1.9382, analysis.clipping().driveOverOnsetDb(), 0.05);
    }

    @Test
    void copesWithNoiseHumAndDirectVoltage() throws CaptureException {
        double[] samples = pattern(1000, 1.2, 0.02, 0, 0.1).toArray();
        double[] disturbed = Waves.scaled(Waves.plus(samples, sampled(samples.length, 50, 0, series(0.05))), 1, 0.1);
        ChannelAnalysis analysis = analyze(Waves.withNoise(disturbed, 0.05, 5));
        assertEquals(BURST_WATTS, analysis.burst().orElseThrow().powerWatts(), 0.005 * BURST_WATTS);
        assertEquals(0.02, analysis.burst().orElseThrow().onSeconds(), 2e-4);
    }

    @Test
    void takesNoSteadyWaveForABurst() throws CaptureException {
        double[] noisy = Waves.withNoise(sampled(48_000, 1000, 0, series(1)), 0.2, 1);
        assertTrue(analyze(noisy).burst().isEmpty());
        // A beat of two tones rises and falls slowly, or comes again within a few cycles.
        for (double otherHz : new double[] {1010, 1040, 1050, 1060, 1070, 1080, 1090, 1100, 1150, 1200, 1300, 1500}) {
            double[] beat = Waves.plus(sampled(48_000, 1000, 0, series(1)), sampled(48_000, otherHz, 0, series(0.95)));
            assertTrue(analyze(beat).burst().isEmpty(), "beat with " + otherHz);
        }
        double[] pulses = sampled(48_000, 100, 0, phase -> Math.IEEEremainder(phase, 2 * Math.PI) > 2.5 ? 1 : 0);
        assertTrue(analyze(pulses).burst().isEmpty());
        for (double frequencyHz : new double[] {20, 100, 5000, 15_000, 19_990}) {
            double[] tone = Waves.withNoise(sampled(24_000, frequencyHz, 0, series(1)), 0.05, 2);
            assertTrue(analyze(tone).burst().isEmpty(), "at " + frequencyHz);
        }
    }
}
