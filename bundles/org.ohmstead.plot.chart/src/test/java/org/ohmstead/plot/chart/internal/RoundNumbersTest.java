// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoundNumbersTest {
    @ParameterizedTest
    @CsvSource({"10, 10, 1", "10.1, 10, 2", "450, 10, 50", "0.3, 10, 0.05", "6, 10, 1", "7e-7, 10, 1e-7"})
    void stepIsTheSmallestOfOneTwoFive(double span, double parts, double step) {
        assertEquals(step, RoundNumbers.step(span, parts).value());
    }

    @Test
    void multiplesAreExactDecimals() {
        List<BigDecimal> found = RoundNumbers.multiples(new RoundNumbers.Step(1, -1), -0.1, 0.3);
        assertEquals(
                List.of("-0.1", "0.0", "0.1", "0.2", "0.3"),
                found.stream().map(RoundNumbers::plain).toList());
    }

    @Test
    void logPlacesIncludeBothEnds() {
        List<String> found = RoundNumbers.logPlaces(0.008, 0.03).stream()
                .map(place -> RoundNumbers.plain(place.times(1)))
                .toList();
        assertEquals(List.of("0.008", "0.009", "0.01", "0.02", "0.03"), found);
    }

    @ParameterizedTest
    @CsvSource({"1, -2, 0.01", "1, 1, 10", "2, 4, 20000", "5, -7, 0.0000005"})
    void numbersAreWrittenWithoutExponent(int mantissa, int exponent, String text) {
        assertEquals(text, RoundNumbers.plain(new RoundNumbers.Step(mantissa, exponent).times(1)));
    }
}
