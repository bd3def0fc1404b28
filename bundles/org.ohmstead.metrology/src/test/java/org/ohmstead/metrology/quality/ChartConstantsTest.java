// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvSource;

class ChartConstantsTest {

    private static final double FIVE_DECIMALS = 0.0000051;
    private static final double FOUR_DECIMALS = 0.000051;

    // The table of control chart constants as printed in ISO 7870-2 and in every handbook of quality control.
    @ParameterizedTest
    @CsvSource({
        "2, 1.12838, .85250, .79788, 1.8800, 2.6587, 0, 3.2665, 0, 3.2665",
        "3, 1.69257, .88837, .88623, 1.0233, 1.9544, 0, 2.5746, 0, 2.5682",
        "4, 2.05875, .87981, .92132, .7286, 1.6281, 0, 2.2821, 0, 2.2660",
        "5, 2.32593, .86408, .93999, .5768, 1.4273, 0, 2.1145, 0, 2.0890",
        "6, 2.53441, .84804, .95153, .4832, 1.2871, 0, 2.0038, .0304, 1.9696",
        "7, 2.70436, .83321, .95937, .4193, 1.1819, .0757, 1.9243, .1177, 1.8823",
        "8, 2.84720, .81983, .96503, .3725, 1.0991, .1362, 1.8638, .1851, 1.8149",
        "10, 3.07751, .79705, .97266, .3083, .9754, .2230, 1.7770, .2837, 1.7163"
    })
    void agreeWithThePrintedTable(ArgumentsAccessor row) {
        ChartConstants constants = ChartConstants.of(row.getInteger(0));
        assertEquals(row.getDouble(1), constants.d2(), FIVE_DECIMALS);
        assertEquals(row.getDouble(2), constants.d3(), FIVE_DECIMALS);
        assertEquals(row.getDouble(3), constants.c4(), FIVE_DECIMALS);
        assertEquals(row.getDouble(4), constants.a2(), FOUR_DECIMALS);
        assertEquals(row.getDouble(5), constants.a3(), FOUR_DECIMALS);
        assertEquals(row.getDouble(6), constants.lowerRangeFactor(), FOUR_DECIMALS);
        assertEquals(row.getDouble(7), constants.upperRangeFactor(), FOUR_DECIMALS);
        assertEquals(row.getDouble(8), constants.lowerDeviationFactor(), FOUR_DECIMALS);
        assertEquals(row.getDouble(9), constants.upperDeviationFactor(), FOUR_DECIMALS);
    }

    // SciPy 1.17.1: d2 = quad(lambda x: 1 - norm.cdf(x)**n - norm.sf(x)**n, -12, 12); d3 from the second moment of the
    // range, quad over w of 2 w P(W > w).
    @ParameterizedTest
    @CsvSource({
        "5, 2.3259289472810396, 0.8640819410994636",
        "25, 3.9306292195071117, 0.7084407658885448",
        "50, 4.498147258779698, 0.6521425884295925",
        "100, 5.015187272883365, 0.60517910948678"
    })
    void agreeWithNumericalIntegration(int size, double d2, double d3) {
        assertEquals(d2, ChartConstants.of(size).d2(), 1e-9);
        assertEquals(d3, ChartConstants.of(size).d3(), 1e-8);
    }

    @Test
    void smallSamplesHaveClosedForms() {
        // W of 2 is half-normal: d2 = 2/sqrt(pi), d3² = 2 - 4/pi, c4 = sqrt(2/pi); d2 of 3 is 3/sqrt(pi).
        ChartConstants pair = ChartConstants.of(2);
        assertEquals(2 / Math.sqrt(Math.PI), pair.d2(), 1e-12);
        assertEquals(Math.sqrt(2 - 4 / Math.PI), pair.d3(), 1e-11);
        assertEquals(Math.sqrt(2 / Math.PI), pair.c4(), 1e-13);
        assertEquals(2.658681, pair.e2(), 1e-6);
        assertEquals(3 / Math.sqrt(Math.PI), ChartConstants.of(3).d2(), 1e-12);
        assertEquals(Math.sqrt(Math.PI) / 2, ChartConstants.of(3).c4(), 1e-13);
    }

    @Test
    void rejectsSizesOutsideTheRange() {
        assertThrows(IllegalArgumentException.class, () -> ChartConstants.of(1));
        assertThrows(IllegalArgumentException.class, () -> ChartConstants.of(101));
    }
}
