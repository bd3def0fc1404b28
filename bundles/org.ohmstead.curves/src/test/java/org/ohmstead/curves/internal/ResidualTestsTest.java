// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ResidualTestsTest {

    @Test
    void andersonDarlingAgreesWithSciPy() {
        // scipy.stats.anderson of these values: 0.15452174290; times 1 + 0.75/10 + 2.25/100.
        double[] values = {0.3, -1.2, 0.8, 2.5, -0.4, 0.1, -0.9, 1.1, 0.05, -2.0};
        assertEquals(0.16958761283517923, ResidualTests.andersonDarling(values).orElseThrow(), 1e-9);
        assertTrue(ResidualTests.andersonDarling(new double[] {1, 2, 3}).isEmpty());
        assertTrue(ResidualTests.andersonDarling(new double[10]).isEmpty());
    }

    @Test
    void runsHaveTheirClosedForm() {
        // Five of each sign: expected 2 x 25/10 + 1 = 6 runs, variance 50 x 40/(100 x 9) = 20/9.
        double[] two = {1, 1, 1, 1, 1, -1, -1, -1, -1, -1};
        double[] ten = {1, -1, 1, -1, 1, -1, 1, -1, 1, -1};
        assertEquals(2, ResidualTests.runs(two));
        assertEquals(
                (2 - 6) / Math.sqrt(20.0 / 9), ResidualTests.runsDeviation(two).orElseThrow(), 1e-12);
        assertEquals(
                (10 - 6) / Math.sqrt(20.0 / 9), ResidualTests.runsDeviation(ten).orElseThrow(), 1e-12);
        assertTrue(ResidualTests.runsDeviation(new double[] {1, 2, 3}).isEmpty());
    }
}
