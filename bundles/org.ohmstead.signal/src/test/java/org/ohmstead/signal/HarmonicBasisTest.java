// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HarmonicBasisTest {
    private static final double REL_OF_SUM = 1e-12;

    @ParameterizedTest
    @CsvSource({
        "1, 1",
        "2, 1",
        "3, 2",
        "16, 2",
        "33, 5",
        "512, 3",
        "513, 3",
        "514, 1",
        "1454, 20",
        "7746, 100",
        "4096, 3",
        "4097, 5",
        "4223, 20",
        "4224, 20",
        "12000, 20"
    })
    void projectsAndSumsAsTermByTerm(int size, int orders) {
        double radians = 3.0 / (orders + 1);
        double[] samples = Waves.withNoise(new double[size], 1, size);
        double[] factors = Waves.withNoise(new double[2 * orders + 1], 1, orders);
        HarmonicBasis basis = new HarmonicBasis(size, radians, orders);
        double[] sums = basis.project(samples);
        double[] wave = basis.synthesize(factors);
        double[] expectedSums = new double[2 * orders + 1];
        for (int i = 0; i < size; i++) {
            double t = i - 0.5 * (size - 1);
            double expected = factors[0];
            expectedSums[0] += samples[i];
            for (int n = 1; n <= orders; n++) {
                expectedSums[n] += samples[i] * Math.cos(n * radians * t);
                expectedSums[orders + n] += samples[i] * Math.sin(n * radians * t);
                expected += factors[n] * Math.cos(n * radians * t) + factors[orders + n] * Math.sin(n * radians * t);
            }
            assertEquals(expected, wave[i], REL_OF_SUM * size * orders);
        }
        for (int j = 0; j < sums.length; j++) {
            assertEquals(expectedSums[j], sums[j], REL_OF_SUM * size * orders);
        }
    }

    @ParameterizedTest
    @CsvSource({"RECTANGULAR, 7.3", "HANN, 7.3", "BLACKMAN_HARRIS_4, 12.4"})
    void stepsToTheFrequencyOfAWave(Window window, double cycles) {
        // A Gauss-Newton step removes an error of the frequency up to its square.
        int size = 1500;
        double radians = 2 * Math.PI * cycles / size;
        double[] factors = {0.2, 1, -0.1, 0.05, 0.4, 0.2, -0.3};
        double[] samples = new HarmonicBasis(size, radians, 3).synthesize(factors);
        double[] products = window.centredWeights(size);
        double[] moments = new double[size];
        for (int i = 0; i < size; i++) {
            products[i] *= samples[i];
            moments[i] = products[i] * (i - 0.5 * (size - 1));
        }
        for (double angle : new double[] {0, 1e-5, -1e-4, 1e-2}) {
            double error = angle / size;
            FrequencyStep step =
                    new FrequencyStep(new HarmonicBasis(size, radians - error, 3), window, products, moments);
            assertTrue(step.isDetermined());
            assertEquals(angle, step.radiansPerSample() * size, 1e-12 + 2 * angle * angle);
        }
    }
}
