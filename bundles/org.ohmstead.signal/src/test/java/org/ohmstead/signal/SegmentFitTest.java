// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SegmentFitTest {
    /** With an even and an odd number of orders, a length that blocks divide and one they do not, and a start that is off. */
    @ParameterizedTest
    @CsvSource({"8192,997.3,20", "8192,2615.7,9", "5000,1204.1,19", "4098,11000,2", "257,3000,7"})
    void fitsASegmentAsTheWholeIsFitted(int size, double frequencyHz, int mostOrders) {
        double[] samples = Waves.withNoise(
                Waves.sampled(
                        size,
                        frequencyHz,
                        0.7,
                        phase -> 0.3 + 10 * Math.sin(phase) + 0.2 * Math.cos(2 * phase) + 0.1 * Math.sin(5 * phase)),
                0.01,
                size);
        double start = 2 * Math.PI * (frequencyHz + 0.2 * Waves.RATE_HZ / size) / Waves.RATE_HZ;
        HarmonicFit expected = HarmonicFit.of(samples, start, mostOrders, true);
        SegmentFit fits = new SegmentFit(size, mostOrders);
        // What an earlier segment left in the tables must not show.
        fits.fit(samples, start * 1.0001);
        HarmonicFit fit = fits.fit(samples, start);

        assertEquals(expected.orders(), fit.orders());
        assertEquals(expected.radiansPerSample(), fit.radiansPerSample(), 1e-9 / size);
        assertEquals(expected.dcVolts(), fit.dcVolts(), 1e-8);
        assertEquals(expected.middlePhaseRadians(), fit.middlePhaseRadians(), 1e-8);
        for (int n = 1; n <= fit.orders(); n++) {
            assertEquals(expected.amplitudeVolts(n), fit.amplitudeVolts(n), 1e-8);
            assertEquals(
                    0, Math.IEEEremainder(expected.sinePhaseRadians(n) - fit.sinePhaseRadians(n), 2 * Math.PI), 1e-4);
        }
        assertArrayEquals(expected.residual(), fit.residual(), 1e-7);
    }
}
