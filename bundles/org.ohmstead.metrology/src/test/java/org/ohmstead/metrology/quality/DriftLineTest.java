// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.FitException;

class DriftLineTest {

    // GUM H.3: correction of a thermometer (kelvin) over its reading (degrees Celsius).
    private static final double[] CELSIUS = {
        21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    private static final double[] KELVIN = {-.171, -.169, -.166, -.159, -.164, -.165, -.156, -.157, -.159, -.161, -.160
    };

    @Test
    void slopeOfTheGumIsMoreThanChance() throws FitException {
        // GUM H.3.3: slope 0.00218, u = 0.00067. Probability and interval: SciPy 1.17.1, scipy.stats.linregress and
        // t.ppf(0.975, 9) times the standard error.
        DriftLine line = DriftLine.of(CELSIUS, KELVIN, 0.95);
        assertEquals(0.0021826977, line.slope().value(), 1e-9);
        assertEquals(0.00066793877, line.slope().standardUncertainty(), 1e-10);
        assertEquals(9, line.slope().degreesOfFreedom());
        assertEquals(0.009716648839294045, line.pValue(), 1e-8);
        assertEquals(0.0015109824801679873, line.interval().width() / 2, 1e-9);
        assertTrue(line.drifts());
        assertEquals("The readings drift by 0.002183 +- 0.001511 K per degree.", line.sentence("K", "degree"));
        assertFalse(DriftLine.of(CELSIUS, KELVIN, 0.995).drifts());
    }

    @Test
    void levelAndExactReadings() throws FitException {
        DriftLine level = DriftLine.of(new double[] {1, 2, 3}, new double[] {5, 5, 5}, 0.95);
        assertEquals(1, level.pValue());
        assertFalse(level.drifts());
        assertTrue(level.sentence("V", "day").startsWith("No drift is to be seen"), level.sentence("V", "day"));
        DriftLine exact = DriftLine.of(new double[] {1e6 + 1, 1e6 + 2, 1e6 + 3}, new double[] {1, 2, 3}, 0.95);
        assertEquals(1, exact.slope().value(), 1e-12);
        assertTrue(exact.drifts());
    }

    @Test
    void needsReadingsAtDifferentTimes() {
        assertThrows(FitException.class, () -> DriftLine.of(new double[] {1, 1, 1}, new double[] {1, 2, 3}, 0.95));
        assertThrows(
                IllegalArgumentException.class, () -> DriftLine.of(new double[] {1, 2}, new double[] {1, 2}, 0.95));
    }
}
