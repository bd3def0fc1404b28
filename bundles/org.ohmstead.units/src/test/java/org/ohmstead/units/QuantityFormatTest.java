// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityFormatTest {
    // Prefixes: SI brochure, table 7.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.0047 | OHM | 3 | 4.70 m\u03a9",
                "4700 | OHM | 2 | 4.7 k\u03a9",
                "999.96 | WATT | 4 | 1.000 kW",
                "999.94 | WATT | 4 | 999.9 W",
                "-13.8 | VOLT | 4 | -13.80 V",
                "0 | VOLT | 3 | 0.00 V",
                "123456 | DECIBEL | 3 | 123000 dB",
                "25 | CELSIUS | 3 | 25.0 \u00b0C",
                "1e-15 | FARAD | 2 | 0.0010 pF",
                "5e12 | HERTZ | 2 | 5000 GHz",
                "0.01 | NONE | 2 | 0.010",
            })
    void printsWithPrefixAndDigits(double value, Unit unit, int digits, String expected) {
        assertEquals(expected, QuantityFormat.digits(digits).format(new Quantity(value, unit)));
    }

    @Test
    void followsTheDecimalMarkOfALocale() {
        assertEquals("13,80 V", QuantityFormat.localised(4, Locale.GERMANY).format(new Quantity(13.8, Unit.VOLT)));
        assertEquals("13.8 V", QuantityFormat.LOCALE_FREE.format(new Quantity(13.8, Unit.VOLT)));
    }

    @Test
    void whatIsPrintedReadsBack() throws QuantityException {
        Random random = new Random(20260302);
        for (int i = 0; i < 2000; i++) {
            double value = Math.scalb(random.nextDouble() - 0.5, random.nextInt(60) - 30);
            Unit unit = Unit.values()[random.nextInt(Unit.values().length)];
            String text = QuantityFormat.digits(17).format(new Quantity(value, unit));
            assertEquals(value, QuantityParser.parse(text, unit).value(), 1e-15 * Math.abs(value), text);
        }
    }

    @Test
    void refusesWhatIsNoNumber() {
        assertThrows(IllegalArgumentException.class, () -> QuantityFormat.LOCALE_FREE.format(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new Quantity(Double.POSITIVE_INFINITY, Unit.VOLT));
        assertThrows(IllegalArgumentException.class, () -> QuantityFormat.digits(0));
    }
}
