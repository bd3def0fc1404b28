// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.signal.Waves.analyze;
import static org.ohmstead.signal.Waves.sampled;
import static org.ohmstead.signal.Waves.series;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ClippingFitTest {
    private static void assertDrive(double k, Clipping clipping, double toleranceDb) {
        // Hard limit at k: drive over onset -20 log k, flat share of time 1 - 2 asin(k) / pi (closed form).
        double driveDb = -20 * Math.log10(k);
        assertTrue(clipping.clipped(), "k = " + k);
        assertEquals(driveDb, clipping.driveOverOnsetDb(), Math.max(toleranceDb, 0.05 * driveDb), "k = " + k);
        assertEquals(1 - 2 * Math.asin(k) / Math.PI, clipping.flatShare(), 0.03, "k = " + k);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.99, 0.98, 0.97, 0.95, 0.9, 0.85, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3})
    void findsDepthOfHardClipping(double k) throws CaptureException {
        assertDrive(k, analyze(sampled(960, 1000, 0.3, Waves.clipped(k))).clipping(), 0.005);
        assertDrive(k, analyze(sampled(4800, 997.37, 0.3, Waves.clipped(k))).clipping(), 0.001);
        assertDrive(k, analyze(sampled(4800, 40, 2, Waves.clipped(k))).clipping(), 0.001);
        assertDrive(
                k,
                analyze(sampled(960, 1000, 1, series(Waves.clippedSeries(k, 19))))
                        .clipping(),
                0.001);
        // Only three harmonics fit in the band at 2.5 kHz.
        assertDrive(
                k,
                analyze(sampled(4800, 2500, 1, series(Waves.clippedSeries(k, 7))))
                        .clipping(),
                0.001);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.98, 0.95, 0.9, 0.7, 0.5, 0.3})
    void findsDepthInNoiseAndWithOtherFaults(double k) throws CaptureException {
        double[] plain = sampled(4800, 997.37, 0.3, Waves.clipped(k));
        assertDrive(k, analyze(Waves.withNoise(plain, 0.005 * k, 4)).clipping(), 0.1);
        double[] ripple = new double[9600];
        double[] tilted = new double[4800];
        for (int i = 0; i < ripple.length; i++) {
            double rail = k * (1 + 0.02 * Math.sin(2 * Math.PI * 100 * i / Waves.RATE_HZ));
            ripple[i] = Math.max(-rail, Math.min(rail, Math.sin(2 * Math.PI * 997.3 * i / Waves.RATE_HZ)));
        }
        for (int i = 0; i < tilted.length; i++) {
            double phase = 2 * Math.PI * 40 * i / Waves.RATE_HZ;
            double fromPeak = Math.IEEEremainder(phase - Math.PI / 2, Math.PI) / (Math.PI / 2);
            double rail = k * (1 - 0.04 * fromPeak);
            tilted[i] = Math.max(-rail, Math.min(rail, Math.sin(phase)));
        }
        assertDrive(k, analyze(ripple).clipping(), 0.1);
        assertDrive(k, analyze(tilted).clipping(), 0.1);
        // Crossover takes 0.005 off the drive, the square law adds to one side: both change the onset by 0.05 dB or so.
        DoubleUnaryOperator crossover = phase -> {
            double x = Math.sin(phase);
            return Math.max(-k, Math.min(k, x - Math.max(-0.005, Math.min(0.005, x))));
        };
        assertDrive(k, analyze(sampled(4800, 997.37, 0.3, crossover)).clipping(), 0.1);
        DoubleUnaryOperator squareLaw = phase -> {
            double x = Math.sin(phase);
            return Math.max(-k, Math.min(k, x + 0.005 * x * x));
        };
        assertDrive(k, analyze(sampled(4800, 997.37, 0.3, squareLaw)).clipping(), 0.1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.9, 0.8, 0.6, 0.4})
    void findsClippingWithRoundedCorners(double k) throws CaptureException {
        DoubleUnaryOperator rounded = phase -> {
            double x = Math.sin(phase);
            return x / Math.pow(1 + Math.pow(Math.abs(x) / k, 20), 1 / 20.0);
        };
        assertDrive(k, analyze(sampled(4800, 997.37, 0.3, rounded)).clipping(), 0.1);
    }

    @Test
    void tellsTheSidesApart() throws CaptureException {
        Clipping clipping = analyze(sampled(4800, 997.37, 0, phase -> Math.max(-0.9, Math.min(0.7, Math.sin(phase)))))
                .clipping();
        assertEquals(-20 * Math.log10(0.7), clipping.positiveDriveDb(), 0.01);
        assertEquals(-20 * Math.log10(0.9), clipping.negativeDriveDb(), 0.01);
        assertEquals(clipping.positiveDriveDb(), clipping.driveOverOnsetDb());
    }

    private static void assertNotClipped(double[] samples) throws CaptureException {
        Clipping clipping = analyze(samples).clipping();
        assertFalse(clipping.clipped(), clipping.toString());
        assertEquals(0, clipping.driveOverOnsetDb());
    }

    @Test
    void isNotFooledByWavesWithoutFlatTops() throws CaptureException {
        assertNotClipped(sampled(4800, 997.37, 0.3, Math::sin));
        assertNotClipped(sampled(960, 1000, 0.3, phase -> Math.rint(127 * Math.sin(phase)) / 127));
        assertNotClipped(sampled(4800, 997.37, 0.3, phase -> Math.asin(Math.sin(phase))));
        assertNotClipped(sampled(4800, 997.37, 0.3, phase -> Math.IEEEremainder(phase, 2 * Math.PI)));
        assertNotClipped(sampled(4800, 997.37, 0.3, series(1, 0.03, 0.01, 0.003)));
        // THD 3 % of y = x - a x^3: its top still slopes with two thirds of the slope at zero.
        for (double a : new double[] {0.001, 0.01, 0.05, 0.11}) {
            assertNotClipped(sampled(4800, 997.37, 0.3, phase -> Math.sin(phase) - a * Math.pow(Math.sin(phase), 3)));
        }
        for (double g : new double[] {0.3, 0.5, 1}) {
            assertNotClipped(sampled(4800, 997.37, 0.3, phase -> Math.tanh(g * Math.sin(phase))));
        }
        for (double d : new double[] {0.001, 0.01, 0.05, 0.2}) {
            assertNotClipped(
                    sampled(4800, 997.37, 0.3, phase -> Math.sin(phase) - Math.max(-d, Math.min(d, Math.sin(phase)))));
        }
    }

    @Test
    void isNotFooledByNoise() throws CaptureException {
        for (int seed = 0; seed < 40; seed++) {
            assertNotClipped(Waves.withNoise(sampled(4800, 997.37, 0.3, Math::sin), 0.01, seed));
            assertNotClipped(Waves.withNoise(sampled(960, 1000, 0.3, Math::sin), 0.03, seed));
            assertNotClipped(Waves.withNoise(sampled(4800, 40, 0.3, Math::sin), 0.01, seed));
        }
    }

    @ParameterizedTest
    @CsvSource({"0.05", "0.2", "2", "6", "10", "15"})
    void doesNotTakeTheFilterOfTheRecorderForAnotherShape(double driveDb) throws CaptureException {
        // At 22.05 kHz the 11th harmonic of 1 kHz, just below half the sample rate, is taken off by the filter.
        double[] factors = Waves.clippedSeries(Math.pow(10, -driveDb / 20), 9);
        double[] samples = new double[11_025];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = Waves.series(factors).applyAsDouble(2 * Math.PI * 997.37 * i / 22_050);
        }
        Clipping clipping = WaveformAnalyzer.analyze(Waveform.of(22_050, samples), AnalysisSettings.forResistance(4))
                .clipping();
        assertTrue(clipping.clipped());
        assertEquals(driveDb, clipping.driveOverOnsetDb(), 0.02 + 0.01 * driveDb);
    }
}
