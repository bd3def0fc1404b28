// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.PulseRule;

class PulseCurveTest {
    /** Short-time overload of MIL-PRF-39009: five times the rated power for five seconds. */
    private static final PulseRule FIVE_FOR_FIVE = new PulseRule(5, 5);

    private static final PulseCurve ENERGY = new PulseCurve(FIVE_FOR_FIVE, PulseModel.CONSTANT_ENERGY);
    private static final PulseCurve FIRST = new PulseCurve(FIVE_FOR_FIVE, PulseModel.FIRST_ORDER);

    /** Closed forms: 25 / x; -tau ln(1 - 1/x) with tau = -5 / ln(1 - 1/5) = 22.407101 s. */
    @ParameterizedTest
    @CsvSource({"1.5, 16.66667, 24.6167", "2, 12.5, 15.5314", "3, 8.333333, 9.0853", "5, 5, 5.0000", "10, 2.5, 2.36082"
    })
    void findsTheLongestTime(double overload, double energySeconds, double firstOrderSeconds) {
        assertEquals(energySeconds, ENERGY.longestSeconds(overload).orElseThrow(), 1e-5);
        assertEquals(firstOrderSeconds, FIRST.longestSeconds(overload).orElseThrow(), 5.1e-5);
        assertEquals(
                overload, ENERGY.highestRatio(ENERGY.longestSeconds(overload).orElseThrow()), 1e-12 * overload);
        assertEquals(overload, FIRST.highestRatio(FIRST.longestSeconds(overload).orElseThrow()), 1e-12 * overload);
    }

    @Test
    void takesTheRatedPowerForEver() {
        assertEquals(22.407101, FIRST.timeConstantSeconds(), 1e-6);
        assertTrue(FIRST.longestSeconds(1).isEmpty());
        assertTrue(ENERGY.longestSeconds(0.3).isEmpty());
        assertEquals(1, ENERGY.highestRatio(1000), 0);
        assertEquals(1, FIRST.highestRatio(1e4), 1e-12);
        assertTrue(FIRST.isBeyondRule(5.1));
        assertFalse(FIRST.isBeyondRule(5));
    }

    @Test
    void asksBothTheMeanAndTheBurst() {
        PulseCurve.Bursts allowed = ENERGY.bursts(5, 0, 4, 25);
        assertEquals(0.8, allowed.averageRatio(), 1e-12);
        assertTrue(allowed.holds());
        assertFalse(ENERGY.bursts(5, 0, 4, 19).averageHolds());
        PulseCurve.Bursts longBurst = ENERGY.bursts(5, 0, 6, 1000);
        assertTrue(longBurst.averageHolds());
        assertFalse(longBurst.holds());
        assertTrue(ENERGY.bursts(1, 1, 6, 1000).holds());
        assertThrows(IllegalArgumentException.class, () -> ENERGY.bursts(5, 0, 6, 6));
    }

    @Test
    void findsThePeakOfTheWarmResistorBySteppingThroughManyPeriods() {
        // The closed form against following the exponential from cold through 200 periods.
        double tau = FIRST.timeConstantSeconds();
        double rise = 0;
        double peak = 0;
        for (int period = 0; period < 200; period++) {
            peak = 4 + (rise - 4) * Math.exp(-2 / tau);
            rise = 0.1 + (peak - 0.1) * Math.exp(-7 / tau);
        }
        PulseCurve.Bursts bursts = FIRST.bursts(4, 0.1, 2, 9);
        assertEquals(peak, bursts.peakRiseRatio().orElseThrow(), 1e-12);
        assertTrue(bursts.averageHolds());
        assertFalse(bursts.peakHolds());
    }
}
