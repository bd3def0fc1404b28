// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpectrumTest {
    @ParameterizedTest
    @CsvSource({
        // Coherent gain, noise bandwidth and loss half way between two bins (Harris 1978; ISO 18431-2).
        "RECTANGULAR, 1, 1, 3.9224, 1e-4", "HANN, 0.5, 1.5, 1.4236, 1e-4",
        "BLACKMAN_HARRIS_4, 0.35875, 2.004353, 0.82557, 1e-4", "FLAT_TOP, 0.215554, 3.770933, 0.0090, 1e-4"
    })
    void windowsHaveTheirConstants(Window window, double gain, double noiseBins, double scallopDb, double toleranceDb) {
        assertEquals(gain, window.coherentGain(), 1e-6);
        assertEquals(noiseBins, window.noiseBandwidthBins(), 1e-6);
        double[] weights = window.weights(4096);
        double sum = 0;
        double squares = 0;
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i];
            squares += weights[i] * weights[i];
            real += weights[i] * Math.cos(Math.PI * i / weights.length);
            imaginary += weights[i] * Math.sin(Math.PI * i / weights.length);
        }
        assertEquals(gain, sum / 4096, 1e-6);
        assertEquals(noiseBins, 4096 * squares / (sum * sum), 1e-6);
        assertEquals(-scallopDb, 20 * Math.log10(Math.hypot(real, imaginary) / sum), toleranceDb);
    }

    @Test
    void hannIsPeriodic() {
        // Eight points: sum 4 and sum of squares 3 in the periodic form (3.5 and 2.625 in the symmetric one).
        double[] weights = Window.HANN.weights(8);
        double sum = 0;
        double squares = 0;
        for (double weight : weights) {
            sum += weight;
            squares += weight * weight;
        }
        assertEquals(4, sum, 1e-12);
        assertEquals(3, squares, 1e-12);
        assertEquals(0, weights[0], 1e-12);
        assertEquals(1, weights[4], 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"RECTANGULAR", "HANN", "BLACKMAN_HARRIS_4", "FLAT_TOP"})
    void closedFormOfTheCentredKernelIsTheSum(Window window) {
        for (int size : new int[] {7, 8, 64, 101}) {
            double[] weights = window.centredWeights(size);
            for (double theta : new double[] {0, 1e-9, 0.3, 2, Math.PI, 5, 2 * Math.PI, 9.1}) {
                double sum = 0;
                for (int i = 0; i < size; i++) {
                    sum += weights[i] * Math.cos(theta * (i - 0.5 * (size - 1)));
                }
                assertEquals(sum, window.centredKernel(size, theta), 1e-9 * size);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "0.25, -0.35152", "0.5, -1.4236"})
    void hannBinHasItsShape(double offsetBins, double levelDb) {
        // W(x) = sinc(x) / (1 - x^2).
        Waveform sine = Waveforms.sine(48_000, 4800, 1000 + 10 * offsetBins, Math.sqrt(2), 0.2);
        Spectrum spectrum = Spectrum.of(sine, Window.HANN);
        assertEquals(10, spectrum.binHz(), 1e-12);
        assertEquals(1000, spectrum.frequencyHz(100), 1e-9);
        assertEquals(levelDb, 20 * Math.log10(spectrum.voltsRmsAt(100)), 1e-3);
    }

    @Test
    void flatTopShowsTheLevelBetweenBins() {
        for (double offset = 0; offset <= 0.5; offset += 0.1) {
            Waveform sine = Waveforms.sine(48_000, 4801, 48_000 * (100 + offset) / 4801, Math.sqrt(2), 0.2);
            assertEquals(0, 20 * Math.log10(Spectrum.of(sine, Window.FLAT_TOP).voltsRmsAt(100)), 0.011);
        }
    }

    @ParameterizedTest
    @CsvSource({"RECTANGULAR", "HANN", "BLACKMAN_HARRIS_4", "FLAT_TOP"})
    void bandSumIsTheRmsOfASine(Window window) {
        Waveform sine = Waveforms.sine(48_000, 48_000, 1000, 2, 0);
        assertEquals(Math.sqrt(2), Spectrum.of(sine, window).bandVoltsRms(900, 1100, FrequencyWeighting.Z), 1e-6);
    }

    @Test
    void bandSumOfWeightedWhiteNoise() {
        double[] noise = Waves.withNoise(new double[1 << 20], 1, 61672);
        Spectrum spectrum = Spectrum.of(Waveform.of(48_000, noise), Window.HANN);
        double flat = spectrum.bandVoltsRms(20, 20_000, FrequencyWeighting.Z);
        // White noise of 1 V over 24 kHz.
        assertEquals(Math.sqrt(19_980 / 24_000.0), flat, 0.003);
        // Integrals of the closed forms over 20 Hz to 20 kHz.
        assertEquals(-2.04827, 20 * Math.log10(spectrum.bandVoltsRms(20, 20_000, FrequencyWeighting.A) / flat), 0.02);
        assertEquals(-3.45050, 20 * Math.log10(spectrum.bandVoltsRms(20, 20_000, FrequencyWeighting.C) / flat), 0.02);
    }

    @ParameterizedTest
    @CsvSource({"1", "2", "3", "4", "5", "6", "7", "16", "31"})
    void transformsAnyLength(int size) {
        double[] samples = Waves.withNoise(new double[size], 1, size);
        double[] expected = new double[size / 2 + 1];
        for (int k = 0; k < expected.length; k++) {
            double real = 0;
            double imaginary = 0;
            for (int i = 0; i < size; i++) {
                real += samples[i] * Math.cos(2 * Math.PI * k * i / size);
                imaginary += samples[i] * Math.sin(2 * Math.PI * k * i / size);
            }
            expected[k] = real * real + imaginary * imaginary;
        }
        assertArrayEquals(expected, RealTransform.squaredMagnitudes(samples.clone()), 1e-10);
    }

    @Test
    void refusesEmptyBandsAndWindows() {
        Spectrum spectrum = Spectrum.of(Waveforms.sine(48_000, 480, 1000, 1, 0), Window.HANN);
        assertThrows(IllegalArgumentException.class, () -> spectrum.bandVoltsRms(100, 100, FrequencyWeighting.Z));
        assertThrows(IllegalArgumentException.class, () -> Window.HANN.weights(0));
    }
}
