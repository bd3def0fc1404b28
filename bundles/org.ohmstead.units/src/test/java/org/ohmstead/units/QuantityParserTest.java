// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityParserTest {
    // Letter codes: IEC 60062 (4R7 = 4.7 ohm, R47 = 0.47 ohm, 47K = 47 kilohm), from memory of the standard.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "4R7 | OHM | 4.7",
                // No letter of IEC 60062 for resistances (L, R, K, M, G, T): a power of ten.
                "15E3 | OHM | 15000",
                "15e3 | OHM | 15000",
                "1.5E3 | OHM | 1500",
                "47E-2 \u03a9 | OHM | 0.47",
                "R47 | OHM | 0.47",
                "1k5 | OHM | 1500",
                "47K | OHM | 47000",
                "2M2 | OHM | 2.2e6",
                "4L7 | OHM | 0.0047",
                "4R7 \u03a9 | OHM | 4.7",
                "0.5 \u03a9 | OHM | 0.5",
                "0.5 ohm | OHM | 0.5",
                "4,7 k\u03a9 | OHM | 4700",
                "4.7m\u2126 | OHM | 0.0047",
                "13.8 V | VOLT | 13.8",
                "13,8 V | VOLT | 13.8",
                "13.8 | VOLT | 13.8",
                "-0.1 dB | DECIBEL | -0.1",
                "20 ms | SECOND | 0.02",
                "10 uH | HENRY | 1e-5",
                "10 \u00b5H | HENRY | 1e-5",
                "10 \u03bcH | HENRY | 1e-5",
                "1e3 Hz | HERTZ | 1000",
                "1 kHz | HERTZ | 1000",
                "1k2 | HERTZ | 1200",
                ".5 W | WATT | 0.5",
                "25 \u00b0C | CELSIUS | 25",
                "25 C | CELSIUS | 25",
                "1 % | PERCENT | 1",
                "2.5 | NONE | 2.5",
                "1.2 K/W | KELVIN_PER_WATT | 1.2",
                "5 m | METRE | 5",
                "5 mm | METRE | 0.005",
            })
    void readsWhatPeopleWrite(String text, Unit unit, double expected) throws QuantityException {
        Quantity quantity = QuantityParser.parse(text, unit);
        assertEquals(unit, quantity.unit());
        assertEquals(expected, quantity.value(), 1e-12 * Math.abs(expected));
    }

    // Multiplied with their prefix as doubles, these miss by a last bit and show up as 0.0010999999999999998 in files.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1u | VOLT | 1e-6",
                "0,011 pF | FARAD | 1.1e-14",
                "610n602517815 | OHM | 6.10602517815e-7",
                "999.9999999 mm | METRE | 0.9999999999",
                "4e310 pV | VOLT | 4e298",
                "4e320 pV | VOLT | 4e308",
                "1e-9999999999 GV | VOLT | 0",
                "1e300 GV | VOLT | 1e309",
            })
    void readsTheNearestDouble(String text, Unit unit, double expected) throws QuantityException {
        if (Double.isFinite(expected)) {
            assertEquals(expected, QuantityParser.parse(text, unit).value());
        } else {
            assertThrows(QuantityException.class, () -> QuantityParser.parse(text, unit));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | OHM | EMPTY | 0",
                "'  ' | OHM | EMPTY | 0",
                "four | OHM | NO_NUMBER | 0",
                "4 V | OHM | WRONG_UNIT | 2",
                "4R7 apples | OHM | TRAILING_TEXT | 4",
                "4R7R | OHM | TRAILING_TEXT | 3",
                "E47 | OHM | NO_NUMBER | 0",
                "13.8 V about | VOLT | WRONG_UNIT | 5",
                "1,234.5 | VOLT | WRONG_UNIT | 5",
                "1e999 V | VOLT | TOO_LARGE | 0",
                "NaN | VOLT | NO_NUMBER | 0",
                "1 m\u00b0C | CELSIUS | WRONG_UNIT | 2",
            })
    void saysWhyATextWontDo(String text, Unit unit, QuantityException.Reason reason, int position) {
        QuantityException error = assertThrows(QuantityException.class, () -> QuantityParser.parse(text, unit));
        assertEquals(reason, error.reason());
        assertEquals(position, error.position());
        assertTrue(error.getMessage().endsWith("."), error.getMessage());
    }
}
