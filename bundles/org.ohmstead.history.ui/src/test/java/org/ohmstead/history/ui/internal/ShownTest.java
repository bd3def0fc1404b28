// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShownTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"50.12|50.12", " 50,12 |50.12", "-3|-3", "\u22123|-3", "+.5|0.5", "1e-3|0.001", "4.|4"})
    void readsNumbersWithPointOrComma(String text, double value) {
        assertEquals(Optional.of(value), Shown.read(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "fifty", "1.2.3", "1,000,000", "5 W", "NaN", "Infinity", "1e999", "--1", "."})
    void refusesWhatIsNoNumber(String text) {
        assertEquals(Optional.empty(), Shown.read(text));
    }

    @Test
    void needsAsManyPlacesAsOneValueNeeds() {
        assertEquals(3, Shown.places(50.6, 50.245, 50));
        assertEquals(0, Shown.places(50, 0, 1e9));
        assertEquals(0, Shown.places());
        assertEquals(2, Shown.places(1234.56789)); // rounded to 6 digits
        assertEquals(9, Shown.places(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"1.25, +1.3", "-1.25, -1.3", "0.01, 0.0", "-0.01, 0.0"})
    void givesASignToWhatIsNotZero(double value, String text) {
        assertEquals(text, Shown.signed(value, 1));
    }

    @Test
    void writesPlusMinusAsOneSign() {
        assertEquals(
                "The readings drift by 0.002 \u00b1 0.0015 K per day.",
                Shown.sentence("The readings drift by 0.002 +- 0.0015 K per day."));
        assertEquals("From -1 to +1.", Shown.sentence("From -1 to +1."));
    }

    @Test
    void editsANumberAsItIsWritten() {
        assertEquals("14.4", Shown.editable(14.4));
        assertEquals("1000000", Shown.editable(1e6));
        assertEquals("0.333333", Shown.editable(1 / 3.0));
    }
}
