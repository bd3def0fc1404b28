// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.plot.ui.ReadOutStyle;

class FiguresTest {
    @ParameterizedTest
    @CsvSource({
        "72.2061, 0.01, W, 72.21 W",
        "13.8, 0.008, V, 13.800 V",
        "-3.14159, 0.1, dB, −3.1 dB",
        "-0.0001, 0.1, V, 0.0 V",
        "19999.6, 20, Hz, 20000 Hz",
        "0.000123456, 0.000001, s, 0.000123 s",
        "123456789, 1000, Hz, 1.23457e8 Hz",
        "0.00000000012345, 0.000000000001, F, 1.23e-10 F"
    })
    void lastDigitIsNoFinerThanWhatCanBeToldApart(double value, double resolution, String unit, String text) {
        assertEquals(
                text.replace("e-", "e\u2212"),
                Figures.value(value, resolution, unit, ReadOutStyle.USUAL).replace("e-", "e\u2212"));
    }

    /** GUM (JCGM 100:2008), 7.2.6: at most two digits of the uncertainty, and the value rounded to suit. */
    @ParameterizedTest
    @CsvSource({
        "79.0321, 1.2345, W, 79.0 W ± 1.2 W (95 %)",
        "10.05762, 0.027, ohm, 10.058 ohm ± 0.027 ohm (95 %)",
        "79.0321, 0.0996, W, 79.03 W ± 0.10 W (95 %)",
        "12345, 120, W, 12350 W ± 120 W (95 %)",
        "-0.5, 0.25, dB, −0.50 dB ± 0.25 dB (95 %)",
        "5, 0, V, 5.00000 V ± 0 V"
    })
    void uncertaintyKeepsTwoDigits(double value, double half, String unit, String text) {
        assertEquals(text, Figures.uncertain(value, half, unit, ReadOutStyle.USUAL));
    }
}
