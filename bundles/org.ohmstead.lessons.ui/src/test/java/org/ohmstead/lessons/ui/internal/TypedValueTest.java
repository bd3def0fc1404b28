// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.lessons.Control;
import org.ohmstead.units.Unit;

class TypedValueTest {
    private static final Control.Slider BURST =
            new Control.Slider("on", "Length of a burst", Unit.SECOND, 0.001, 0.5, 0.02, true, 0, 3);
    private static final Control.Slider LOAD = new Control.Slider("load", "Load", Unit.OHM, 1, 16, 4, true, 0, 3);

    @ParameterizedTest
    @CsvSource({"30, 0.03", "30 ms, 0.03", "0.1 s, 0.1", "'0,1 s', 0.1", "' 7.5 ', 0.0075"})
    void aBareNumberHasTheUnitThatIsShown(String typed, double seconds) {
        assertEquals(
                seconds,
                TypedValue.of(typed, BURST, "20.0 ms", Locale.ENGLISH).value().orElseThrow(),
                1e-12);
    }

    @ParameterizedTest
    @CsvSource({"2R2, 2.2", "8, 8", "1.6 ohm, 1.6", "16, 16", "1, 1"})
    void letterCodesAndEndsOfTheRangeAreTaken(String typed, double ohms) {
        assertEquals(
                ohms,
                TypedValue.of(typed, LOAD, "4.00 \u03a9", Locale.ENGLISH)
                        .value()
                        .orElseThrow());
    }

    @Test
    void whatIsOutsideIsRefusedWithTheRange() {
        TypedValue typed = TypedValue.of("20", LOAD, "4.00 \u03a9", Locale.ENGLISH);
        assertTrue(typed.value().isEmpty());
        assertEquals(
                "20.0 \u03a9 lies outside the range of \u201cLoad\u201d, which goes from 1.00 \u03a9 to 16.0 \u03a9.",
                typed.refusal());
    }

    @ParameterizedTest
    @CsvSource({"four", "4 V", "''", "4 4"})
    void whatDoesNotReadIsRefusedWithAnExample(String typed) {
        String refusal =
                TypedValue.of(typed, LOAD, "4.00 \u03a9", Locale.ENGLISH).refusal();
        assertEquals(
                "\u201c" + typed + "\u201d is no value of \u201cLoad\u201d. Write for example 4.00 \u03a9.", refusal);
    }

    @Test
    void aPredictionIsANumberWithOrWithoutItsUnit() {
        assertEquals(
                0.316,
                TypedValue.of("316 mV", Unit.VOLT, Locale.ENGLISH).value().orElseThrow(),
                1e-12);
        assertEquals(
                12.5,
                TypedValue.of("12,5", Unit.PERCENT, Locale.ENGLISH).value().orElseThrow(),
                1e-12);
        assertTrue(TypedValue.of("", Unit.VOLT, Locale.ENGLISH).refusal().startsWith("Predict first"));
        assertTrue(TypedValue.of("many", Unit.VOLT, Locale.ENGLISH).refusal().contains("many"));
    }
}
