// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CochranTestTest {

    // ISO 5725-2, table of critical values of Cochran's test (three decimals); SciPy 1.17.1: F = f.isf(a/p, n-1,
    // (p-1)(n-1)), C = 1/(1 + (p-1)/F).
    @ParameterizedTest
    @CsvSource({
        "2, 2, 0.998458666866564, 0.9999383162408304",
        "3, 3, 0.8709005551264192, 0.9422649730810376",
        "5, 2, 0.8412552870530717, 0.9278688494721024",
        "5, 3, 0.683772233983162, 0.7885257473118871",
        "8, 3, 0.5156874570365015, 0.6151665102966508",
        "10, 2, 0.6020095610806491, 0.7174886322477523",
        "10, 5, 0.3311121436919131, 0.3933764387511668",
        "20, 4, 0.22050588223155854, 0.2654050664259848",
        "40, 2, 0.2369380501250736, 0.29404737026007005"
    })
    void criticalValuesAreThoseOfTheTables(int groups, int readings, double five, double one) {
        assertEquals(five, CochranTest.criticalValue(groups, readings, 0.05), 1e-8);
        assertEquals(one, CochranTest.criticalValue(groups, readings, 0.01), 1e-8);
    }

    @Test
    void instrumentsOfTheResistivityDataScatterAlike() {
        // Sums of squares of the NIST StRD SiRstv groups: the second has 0.07614838 of 0.21663656.
        CochranTest.Outcome outcome = CochranTest.test(PrecisionStudyTest.RESISTIVITY, 0.05);
        assertEquals(1, outcome.index());
        assertEquals(0.07614838 / 0.21663656, outcome.statistic(), 1e-9);
        assertFalse(outcome.outlier());
        assertEquals(
                "No instrument scatters noticeably more than the others; the largest standard deviation is 0.138 ohm.",
                outcome.sentence("instrument", "ohm"));
    }

    @Test
    void findsTheGroupThatScatters() {
        List<double[]> groups = List.of(
                new double[] {10, 10.1, 9.9},
                new double[] {10, 11.5, 8.5},
                new double[] {10.1, 10, 9.9},
                new double[] {9.9, 10.1, 10},
                new double[] {10.1, 9.9, 10});
        CochranTest.Outcome outcome = CochranTest.test(groups, 0.01);
        // Variances 0.01 four times and 2.25.
        assertEquals(2.25 / 2.29, outcome.statistic(), 1e-9);
        assertEquals(1.5, outcome.standardDeviation(), 1e-12);
        assertTrue(outcome.outlier());
        assertTrue(outcome.pValue() < 0.01);
        assertTrue(outcome.sentence("operator", "V")
                .startsWith("The readings of operator 2 scatter more than those of the others"));
    }

    @Test
    void probabilityAndCriticalValueAgree() {
        for (double wild = 0.5; wild < 6; wild += 0.25) {
            List<double[]> groups = List.of(
                    new double[] {0, wild, 1, -wild}, new double[] {0, 1, 0.5}, new double[] {1, -0.5}, new double[] {
                        0.2, 0.9, -1, 0.3, 0.1
                    });
            CochranTest.Outcome outcome = CochranTest.test(groups, 0.05);
            assertEquals(outcome.outlier(), outcome.pValue() < 0.05, "at " + wild);
        }
    }

    @Test
    void equalReadingsAndTooFewAreHandled() {
        CochranTest.Outcome level = CochranTest.test(List.of(new double[] {1, 1}, new double[] {2, 2}), 0.05);
        assertEquals(0, level.statistic());
        assertFalse(level.outlier());
        assertThrows(
                IllegalArgumentException.class,
                () -> CochranTest.test(List.of(new double[] {1}, new double[] {2, 2}), 0.05));
        assertThrows(IllegalArgumentException.class, () -> CochranTest.test(List.of(new double[] {1, 2}), 0.05));
        assertThrows(IllegalArgumentException.class, () -> CochranTest.criticalValue(1, 2, 0.05));
    }
}
