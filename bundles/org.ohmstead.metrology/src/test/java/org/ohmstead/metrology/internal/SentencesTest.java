// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SentencesTest {

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "1, 1",
        "-12.3456, -12.35",
        "0.05, 0.05",
        "0.00005, 0.00005",
        "12345.67, 12346",
        "999.96, 1000",
        "12, 12",
        "1.5e-9, 1.500e-09",
        "123456789, 1.235e+08"
    })
    void numbersHaveFourDigits(double value, String text) {
        assertEquals(text, Sentences.number(value));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0 %",
        "0.95, 95 %",
        "0.97725, 97.7 %",
        "0.00621, 0.621 %",
        "0.00001, less than 0.01 %",
        "0.99999, more than 99.99 %",
        "0.9987, 99.87 %",
        "1, 100 %",
        "1.5, 150 %"
    })
    void ratiosBecomePercentages(double ratio, String text) {
        assertEquals(text, Sentences.percent(ratio));
    }

    @Test
    void theUnitMayBeMissing() {
        assertEquals("2.5 W", Sentences.quantity(2.5, "W"));
        assertEquals("2.5", Sentences.quantity(2.5, ""));
    }

    @Test
    void nounsHavePlurals() {
        assertEquals("operators", Sentences.plural("operator"));
        assertEquals("benches", Sentences.plural("bench"));
        assertEquals("days", Sentences.plural("day"));
        assertEquals("laboratories", Sentences.plural("laboratory"));
    }
}
