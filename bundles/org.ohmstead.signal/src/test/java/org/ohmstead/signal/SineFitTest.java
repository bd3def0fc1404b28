// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SineFitTest {
    private static final double[] RECORD = {
        9.08, 2.87, -4.73, -9.39, -8.52, -2.16, 5.39, 9.88, 8.76, 2.25, -5.24, -9.55, -8.18, -1.53, 5.9, 10.02, 8.4,
        1.62, -5.74, -9.67
    };

    @ParameterizedTest
    @CsvSource({
        // Least squares with 30 digits, independent of this code.
        "1000, 8.44089056, -5.44287056, 0.20796807, 10.04357871, 0.57272642, 0.3217519",
        "1010, 8.77715413, -4.79632972, 0.20663369, 10.00216044, 0.50011832, 0.07064042"
    })
    void fitsThreeParameters(
            double frequencyHz, double a, double b, double c, double amplitude, double phase, double residual) {
        SineFit fit = SineFit.threeParameter(RECORD, 8000, frequencyHz);
        assertEquals(a, fit.cosineVolts(), 1e-8);
        assertEquals(b, fit.sineVolts(), 1e-8);
        assertEquals(c, fit.offsetVolts(), 1e-8);
        assertEquals(amplitude, fit.amplitudeVolts(), 1e-8);
        assertEquals(phase, fit.phaseRadians(), 1e-8);
        assertEquals(residual, fit.residualVoltsRms(), 1e-7);
        assertEquals(0, fit.iterations());
    }

    @Test
    void fitsFourParameters() {
        SineFit fit = SineFit.fourParameter(RECORD, 8000, 1000);
        assertEquals(1010.03020650, fit.frequencyHz(), 1e-6);
        assertEquals(8.77807431, fit.cosineVolts(), 1e-6);
        assertEquals(-4.79433060, fit.sineVolts(), 1e-6);
        assertEquals(0.20662663, fit.offsetVolts(), 1e-7);
        assertEquals(10.00200952, fit.amplitudeVolts(), 1e-7);
        assertEquals(0.49989881, fit.phaseRadians(), 1e-7);
        assertEquals(0.07063422, fit.residualVoltsRms(), 1e-8);
        assertTrue(fit.converged() && fit.iterations() <= 8, fit.toString());
    }

    @Test
    void reachesTheCramerRaoBounds() {
        // A = 10, sigma = 0.1, N = 1000: bounds of the four-parameter fit (IEEE Std 1057; inverse Fisher matrix).
        int size = 1000;
        int runs = 1000;
        Random random = new Random(1057);
        double amplitudeSum = 0;
        double offsetSum = 0;
        double phaseSum = 0;
        double knownPhaseSum = 0;
        double frequencySum = 0;
        double residualSum = 0;
        double phase = 0.5;
        for (int run = 0; run < runs; run++) {
            double[] y = new double[size];
            for (int i = 0; i < size; i++) {
                y[i] = 10 * Math.cos(2 * Math.PI * 997 / 48_000 * i + phase) + 0.1 * random.nextGaussian();
            }
            SineFit four = SineFit.fourParameter(y, 48_000, 1000);
            SineFit three = SineFit.threeParameter(y, 48_000, 997);
            amplitudeSum += Math.pow(four.amplitudeVolts() - 10, 2);
            offsetSum += Math.pow(four.offsetVolts(), 2);
            phaseSum += Math.pow(four.phaseRadians() - phase, 2);
            knownPhaseSum += Math.pow(three.phaseRadians() - phase, 2);
            frequencySum += Math.pow(four.frequencyHz() - 997, 2);
            residualSum += four.residualVoltsRms() * four.residualVoltsRms();
        }
        // The standard deviation of 1000 runs is itself known to 2.2 %; four times that is allowed.
        assertEquals(1, Math.sqrt(amplitudeSum / runs) / 4.472136e-3, 0.09);
        assertEquals(1, Math.sqrt(offsetSum / runs) / 3.162278e-3, 0.09);
        assertEquals(1, Math.sqrt(phaseSum / runs) / 8.937568e-4, 0.09);
        assertEquals(1, Math.sqrt(knownPhaseSum / runs) / 4.472136e-4, 0.09);
        assertEquals(1, Math.sqrt(frequencySum / runs) / 0.01183497, 0.09);
        // E[residual^2] = sigma^2 (1 - 4/N), known here to 0.1 %.
        assertEquals(1, residualSum / runs / (0.01 * (1 - 4.0 / size)), 0.004);
    }

    @Test
    void staysExactOverMillionsOfSamples() {
        Waveform sine = Waveforms.sine(48_000, 1_500_000, 997.37, 7, 0.3);
        SineFit fit = SineFit.fourParameter(sine.toArray(), 48_000, 997.3702);
        assertEquals(997.37, fit.frequencyHz(), 1e-9);
        assertEquals(7, fit.amplitudeVolts(), 1e-8);
        assertEquals(0, fit.residualVoltsRms(), 1e-7);
    }

    @Test
    void refusesWhatCannotBeFitted() {
        assertThrows(IllegalArgumentException.class, () -> SineFit.threeParameter(new double[3], 8000, 1000));
        assertThrows(IllegalArgumentException.class, () -> SineFit.fourParameter(new double[4], 8000, 1000));
        assertThrows(IllegalArgumentException.class, () -> SineFit.threeParameter(RECORD, 8000, 4000));
        assertThrows(IllegalArgumentException.class, () -> SineFit.threeParameter(RECORD, 0, 1000));
        assertThrows(IllegalArgumentException.class, () -> SineFit.threeParameter(RECORD, 8000, 1e-4));
        double[] broken = RECORD.clone();
        broken[7] = Double.NaN;
        assertThrows(IllegalArgumentException.class, () -> SineFit.threeParameter(broken, 8000, 1000));
    }
}
