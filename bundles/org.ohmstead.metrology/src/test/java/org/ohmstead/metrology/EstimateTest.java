// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.metrology.Tolerances.REL_1PPM;
import static org.ohmstead.metrology.Tolerances.REL_EXACT;
import static org.ohmstead.metrology.Tolerances.assertClose;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EstimateTest {

    private static final double FOUR_DECIMALS = 0.00005001;

    // Two-sided quantiles of Student's t, closed form; spot values agree with GUM Table G.2.
    @ParameterizedTest
    @CsvSource({
        "1, 1.8373, 6.3138, 12.7062, 13.9677, 63.6567, 235.8015",
        "2, 1.3213, 2.9200, 4.3027, 4.5265, 9.9248, 19.2067",
        "3, 1.1969, 2.3534, 3.1824, 3.3068, 5.8409, 9.2189",
        "4, 1.1416, 2.1318, 2.7764, 2.8693, 4.6041, 6.6202",
        "5, 1.1105, 2.0150, 2.5706, 2.6486, 4.0321, 5.5071",
        "8, 1.0665, 1.8595, 2.3060, 2.3664, 3.3554, 4.2766",
        "10, 1.0526, 1.8125, 2.2281, 2.2837, 3.1693, 3.9569",
        "16, 1.0322, 1.7459, 2.1199, 2.1689, 2.9208, 3.5441",
        "20, 1.0256, 1.7247, 2.0860, 2.1330, 2.8453, 3.4222",
        "30, 1.0169, 1.6973, 2.0423, 2.0868, 2.7500, 3.2703",
        "50, 1.0101, 1.6759, 2.0086, 2.0512, 2.6778, 3.1571",
        "Infinity, 1.0000, 1.6449, 1.9600, 2.0000, 2.5758, 3.0000"
    })
    void coverageFactorIsStudentsT(
            double freedom, double k68, double k90, double k95, double k9545, double k99, double k9973) {
        Estimate estimate = new Estimate(0, 1, freedom);
        // The table's heads 68.27, 95.45 and 99.73 % stand for the exact normal probabilities of 1, 2 and 3 sigma.
        assertEquals(k68, estimate.coverageFactor(0.6826894921370859), FOUR_DECIMALS);
        assertEquals(k90, estimate.coverageFactor(0.90), FOUR_DECIMALS);
        assertEquals(k95, estimate.coverageFactor(0.95), FOUR_DECIMALS);
        assertEquals(k9545, estimate.coverageFactor(0.9544997361036416), FOUR_DECIMALS);
        assertEquals(k99, estimate.coverageFactor(0.99), FOUR_DECIMALS);
        assertEquals(k9973, estimate.coverageFactor(0.9973002039367398), FOUR_DECIMALS);
    }

    @Test
    void coverageFactorApproachesTheNormalOneSmoothly() {
        // Cornish-Fisher: t = z + (z³ + z)/(4 nu) + ...
        double z = 1.959963984540054;
        for (double freedom : new double[] {1e4, 1e6, 9.9e6, 1.1e7, 1e9}) {
            double expected = z + (z * z * z + z) / 4 / freedom;
            assertClose(expected, new Estimate(0, 1, freedom).coverageFactor(0.95), REL_1PPM);
        }
    }

    @Test
    void typeBFactorsAreThoseOfTheGum() {
        // GUM 4.3: a/sqrt3, a/sqrt6, U/k; JCGM 101 6.4.6: a/sqrt2; GUM F.2.2.1: step/(2 sqrt3) = 0.29 step.
        assertClose(0.5773502691896258, Estimate.rectangular(5, 1).standardUncertainty(), REL_EXACT);
        assertClose(0.4082482904638630, Estimate.triangular(5, 1).standardUncertainty(), REL_EXACT);
        assertClose(0.7071067811865476, Estimate.arcsine(5, 1).standardUncertainty(), REL_EXACT);
        assertClose(0.12, Estimate.normal(5, 0.24, 2).standardUncertainty(), REL_EXACT);
        assertClose(0.02886751345948129, Estimate.resolution(5, 0.1).standardUncertainty(), REL_EXACT);
        assertEquals(Double.POSITIVE_INFINITY, Estimate.rectangular(5, 1).degreesOfFreedom());
    }

    @Test
    void readingsGiveMeanAndItsStandardDeviation() {
        // GUM H.2, table H.2: five readings of V.
        Estimate estimate = Estimate.fromReadings(5.007, 4.994, 5.005, 4.990, 4.999);
        assertClose(4.9990, estimate.value(), REL_EXACT);
        assertClose(0.0032093613, estimate.standardUncertainty(), REL_1PPM);
        assertEquals(4, estimate.degreesOfFreedom());
    }

    @Test
    void expandedUncertaintyMultipliesAndIntervalIsCentred() {
        Estimate estimate = new Estimate(100, 2, 4);
        assertEquals(2 * 2.7764, estimate.expandedUncertainty(0.95), 2 * FOUR_DECIMALS);
        CoverageInterval interval = estimate.interval(0.95);
        assertEquals(100 - 2 * 2.7764, interval.lower(), 2 * FOUR_DECIMALS);
        assertEquals(100 + 2 * 2.7764, interval.upper(), 2 * FOUR_DECIMALS);
        assertTrue(interval.contains(95) && !interval.contains(94));
    }

    @Test
    void relativeUncertaintyHasNoSignAndIsAbsentAtZero() {
        assertEquals(0.02, Estimate.of(-50, 1).relative().orElseThrow(), 1e-15);
        assertTrue(Estimate.of(0, 1).relative().isEmpty());
        assertTrue(Estimate.of(0, 0).relative().isEmpty());
    }

    @Test
    void rejectsWhatIsNotAnEstimate() {
        assertThrows(IllegalArgumentException.class, () -> Estimate.of(Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> Estimate.of(1, -1));
        assertThrows(IllegalArgumentException.class, () -> new Estimate(1, 1, 0));
        assertThrows(IllegalArgumentException.class, () -> new Estimate(1, 1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Estimate.of(1, 1).coverageFactor(95));
        assertThrows(IllegalArgumentException.class, () -> Estimate.fromReadings(1));
    }
}
