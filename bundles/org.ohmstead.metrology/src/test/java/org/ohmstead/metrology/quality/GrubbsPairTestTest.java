// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.metrology.GrubbsTest;

class GrubbsPairTestTest {

    private static final double TABLE = 0.00016;

    // ISO 5725-2, table of critical values of Grubbs' test, columns for two outlying observations at 1 % and 5 %
    // (after F. E. Grubbs and G. Beck, Technometrics 14, 1972: half of the risk at either end).
    @ParameterizedTest
    @CsvSource({
        "4, .0000, .0002",
        "5, .0018, .0090",
        "6, .0116, .0349",
        "7, .0308, .0708",
        "8, .0563, .1101",
        "9, .0851, .1492",
        "10, .1150, .1864",
        "11, .1448, .2213",
        "12, .1738, .2537",
        "13, .2016, .2836",
        "14, .2280, .3112",
        "15, .2530, .3367",
        "20, .3585, .4391"
    })
    void criticalValuesAreThoseOfTheTable(int count, double one, double five) {
        assertEquals(one, GrubbsPairTest.criticalValue(count, 0.01, GrubbsTest.Side.EITHER), TABLE);
        assertEquals(five, GrubbsPairTest.criticalValue(count, 0.05, GrubbsTest.Side.EITHER), TABLE);
    }

    // Quantiles of a million (for 20 readings: five million) random samples, NumPy 2.4.6, default_rng(1).
    @ParameterizedTest
    @CsvSource({
        "5, 0.00356211, 0.01828951, 0.0002",
        "10, 0.14181396, 0.23027966, 0.0008",
        "20, 0.39055043, 0.48028543, 0.0006"
    })
    void criticalValuesAreThoseOfRandomSamples(int count, double one, double five, double tolerance) {
        assertEquals(one, GrubbsPairTest.criticalValue(count, 0.01, GrubbsTest.Side.HIGHEST), tolerance);
        assertEquals(five, GrubbsPairTest.criticalValue(count, 0.05, GrubbsTest.Side.LOWEST), tolerance);
    }

    @Test
    void findsTwoOutliersThatHideEachOther() {
        double[] readings = {568, 570, 570, 570, 596, 572, 572, 572, 584, 578};
        // By hand: sum of squares 681.6 about 575.2; without 596 and 584 it is 62 about 571.5.
        GrubbsPairTest.Outcome outcome = GrubbsPairTest.test(readings, 0.05, GrubbsTest.Side.EITHER);
        assertEquals(62 / 681.6, outcome.statistic(), 1e-12);
        assertEquals(List.of(4, 8), outcome.indices());
        assertTrue(outcome.outliers());
        assertEquals(
                "The readings 5 and 9 both lie too far from the others for chance; look for a physical reason before"
                        + " dropping them.",
                outcome.sentence());
        double[] mirrored = Arrays.stream(readings).map(x -> -x).toArray();
        assertEquals(
                List.of(4, 8),
                GrubbsPairTest.test(mirrored, 0.05, GrubbsTest.Side.EITHER).indices());
        GrubbsPairTest.Outcome lowest = GrubbsPairTest.test(readings, 0.05, GrubbsTest.Side.LOWEST);
        assertFalse(lowest.outliers());
        assertTrue(lowest.sentence().contains("but no farther than chance explains"), lowest.sentence());
    }

    @Test
    void equalReadingsHaveNoOutliers() {
        GrubbsPairTest.Outcome outcome =
                GrubbsPairTest.test(new double[] {5, 5, 5, 5, 5}, 0.05, GrubbsTest.Side.EITHER);
        assertEquals(1, outcome.statistic());
        assertFalse(outcome.outliers());
    }

    @Test
    void rejectsCountsOutsideTheRange() {
        assertThrows(
                IllegalArgumentException.class, () -> GrubbsPairTest.criticalValue(3, 0.05, GrubbsTest.Side.EITHER));
        assertThrows(
                IllegalArgumentException.class, () -> GrubbsPairTest.criticalValue(101, 0.05, GrubbsTest.Side.EITHER));
        assertThrows(IllegalArgumentException.class, () -> GrubbsPairTest.criticalValue(10, 0, GrubbsTest.Side.EITHER));
    }
}
