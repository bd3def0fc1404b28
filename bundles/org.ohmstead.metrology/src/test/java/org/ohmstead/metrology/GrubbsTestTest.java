// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrubbsTestTest {

    private static final double TABLE = 0.0006;

    // Critical values from the closed form; the first column is the "5 %" column of ISO 5725-2.
    @ParameterizedTest
    @CsvSource({
        "3, 1.154, 1.155, 1.153, 1.155",
        "4, 1.481, 1.496, 1.463, 1.493",
        "5, 1.715, 1.764, 1.671, 1.749",
        "6, 1.887, 1.973, 1.822, 1.944",
        "7, 2.020, 2.139, 1.938, 2.097",
        "8, 2.127, 2.274, 2.032, 2.221",
        "9, 2.215, 2.387, 2.110, 2.323",
        "10, 2.290, 2.482, 2.176, 2.410",
        "12, 2.412, 2.636, 2.285, 2.549",
        "15, 2.548, 2.806, 2.409, 2.705",
        "20, 2.708, 3.001, 2.557, 2.884",
        "30, 2.908, 3.236, 2.745, 3.103"
    })
    void criticalValuesAreThoseOfTheTables(int n, double two5, double two1, double one5, double one1) {
        assertEquals(two5, GrubbsTest.criticalValue(n, 0.05, GrubbsTest.Side.EITHER), TABLE);
        assertEquals(two1, GrubbsTest.criticalValue(n, 0.01, GrubbsTest.Side.EITHER), TABLE);
        assertEquals(one5, GrubbsTest.criticalValue(n, 0.05, GrubbsTest.Side.HIGHEST), TABLE);
        assertEquals(one1, GrubbsTest.criticalValue(n, 0.01, GrubbsTest.Side.LOWEST), TABLE);
    }

    @Test
    void findsTheOutlierOfTheHandbook() {
        // NIST/SEMATECH e-Handbook of Statistical Methods, Grubbs' test: G = 2.4687, critical 2.032 at 5 % one-sided.
        double[] readings = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
        GrubbsTest.Outcome outcome = GrubbsTest.test(readings, 0.05, GrubbsTest.Side.HIGHEST);
        assertEquals(2.4687646, outcome.statistic(), 1e-6);
        assertEquals(2.0317, outcome.criticalValue(), 0.0001);
        assertEquals(7, outcome.index());
        assertEquals(245.57, outcome.reading());
        assertTrue(outcome.outlier());
        GrubbsTest.Outcome lowest = GrubbsTest.test(readings, 0.05, GrubbsTest.Side.LOWEST);
        assertEquals(0, lowest.index());
        assertFalse(lowest.outlier());
        assertEquals(7, GrubbsTest.test(readings, 0.05).index());
    }

    @Test
    void equalReadingsHaveNoOutlier() {
        GrubbsTest.Outcome outcome = GrubbsTest.test(new double[] {5, 5, 5}, 0.05);
        assertEquals(0, outcome.statistic());
        assertFalse(outcome.outlier());
    }

    @Test
    void rejectsTooFewReadings() {
        assertThrows(IllegalArgumentException.class, () -> GrubbsTest.test(new double[] {1, 2}, 0.05));
        assertThrows(IllegalArgumentException.class, () -> GrubbsTest.test(new double[] {1, 2, 3}, 5));
    }
}
