// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StatedValueTest {
    @ParameterizedTest
    @CsvSource({
        // JCGM 100:2008, 7.2.2: a mass standard of 100.021 47 g with a combined standard uncertainty of 0.35 mg.
        "100.02147, 0.00035, 100.02147, 0.00035",
        // JCGM 100:2008, 7.2.4: the same mass with expanded uncertainty 0.79 mg.
        "100.02147, 0.00079, 100.02147, 0.00079",
        // JCGM 100:2008, 7.2.6: 10.057 62 ohm with 27 mohm is to be rounded to 10.058 ohm.
        "10.05762, 0.027, 10.058, 0.027",
        // Carry: 99.6 becomes 100, whose two significant digits reach to the tens.
        "1234.5, 99.6, 1230, 100",
        "1234.5, 123, 1230, 120",
        "47.1, 0.996, 47.1, 1.0",
        "47.1, 0.0996, 47.10, 0.10",
        // Halves go away from 0.
        "0.25, 1, 0.3, 1.0",
        "-0.25, 1, -0.3, 1.0",
        "0, 0.25, 0.00, 0.25",
        "-0.001, 0.25, 0.00, 0.25",
        "3, 1250, 0, 1300"
    })
    void roundsTheUncertaintyToTwoDigitsAndTheValueToTheSamePlace(
            double value, double uncertainty, String statedValue, String statedUncertainty) {
        assertEquals(new StatedValue(statedValue, statedUncertainty), StatedValue.of(value, uncertainty));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void rejectsAnUncertaintyThatIsNone(double uncertainty) {
        assertThrows(IllegalArgumentException.class, () -> StatedValue.of(1, uncertainty));
    }

    @Test
    void rejectsAValueThatIsNoNumber() {
        assertThrows(IllegalArgumentException.class, () -> StatedValue.of(Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> StatedValue.of(Double.NEGATIVE_INFINITY, 1));
    }
}
