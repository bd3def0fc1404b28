// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** GUM (JCGM 100:2008) 7.2.6: two significant digits of the uncertainty at most, the estimate to the same place. */
class RoundingTest {
    @ParameterizedTest
    @CsvSource({
        // JCGM 100:2008, 7.2.2: a mass standard of 100.021 47 g with a combined standard uncertainty of 0.35 mg.
        "100.02147, 0.00035, 100.02147, 0.00035",
        // JCGM 100:2008, 7.2.4: the same mass with expanded uncertainty 0.79 mg.
        "100.02147, 0.00079, 100.02147, 0.00079",
        // JCGM 100:2008, 7.2.6: 10.057 62 ohm with 27 mohm is to be rounded to 10.058 ohm.
        "10.05762, 0.027, 10.058, 0.027",
        "97.3412, 2.149, 97.3, 2.1",
        "165.7088, 2.771, 165.7, 2.8",
        "631.647, 10.6, 632, 11",
        "1234.5, 99.4, 1235, 99",
        // Carry: 99.6 becomes 100, whose two significant digits reach to the tens.
        "1234.5, 99.6, 1230, 100",
        "1234.5, 123, 1230, 120",
        "47.1, 0.996, 47.1, 1.0",
        "47.1, 0.0996, 47.10, 0.10",
        "0.004, 0.0123, 0.004, 0.012",
        "5, 1, 5.0, 1.0",
        "0, 0.25, 0.00, 0.25"
    })
    void roundsTheUncertaintyToTwoDigitsAndTheValueToTheSamePlace(
            double value, double uncertainty, String printedValue, String printedUncertainty) {
        Rounding rounding = Rounding.of(value, uncertainty);
        assertEquals(printedValue, rounding.value());
        assertEquals(printedUncertainty, rounding.uncertainty());
    }

    @Test
    void printsNegativeValuesWithATrueMinusSign() {
        assertEquals("\u22120.49", Rounding.of(-0.4892, 0.1).value());
    }

    @Test
    void printsNoUncertaintyWhereThereIsNone() {
        Rounding rounding = Rounding.of(4.00812, 0);
        assertEquals("4.008", rounding.text());
        assertEquals("", rounding.uncertainty());
    }

    @Test
    void joinsBothWithAPlusMinusSign() {
        assertEquals("97.3\u00a0\u00b1\u00a02.1", Rounding.of(97.34, 2.1).text());
    }

    @Test
    void rejectsWhatIsNoNumber() {
        assertThrows(IllegalArgumentException.class, () -> Rounding.of(Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> Rounding.of(1, -1));
        assertThrows(IllegalArgumentException.class, () -> Rounding.of(1, Double.POSITIVE_INFINITY));
    }
}
