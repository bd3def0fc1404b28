// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.Range;
import org.ohmstead.units.Unit;

class QuantitiesTest {
    @ParameterizedTest
    @CsvSource({"9,0.009", "9 mm,0.009", "9mm,0.009", "0.5,0.0005", "' 12,0'mm,0.012"})
    void readsMillimetresWithAndWithoutTheUnit(String text, double metres) throws Exception {
        assertEquals(metres, Quantities.millimetres(text.replace("'", ""), 0, 100, "--x"), 1e-15);
    }

    @ParameterizedTest
    @ValueSource(strings = {"-1", "101", "9 cm", "", "mm", "1 V"})
    void refusesMillimetresThatAreNone(String text) {
        assertTrue(assertThrows(InputException.class, () -> Quantities.millimetres(text, 0, 100, "--x"))
                .getMessage()
                .startsWith("--x"));
    }

    @Test
    void readsARangeOrASingleNumber() throws Exception {
        assertEquals(Optional.empty(), Quantities.optionalRange(null, Unit.WATT, 0, 100, "--x"));
        assertEquals(Optional.of(Range.of(15)), Quantities.optionalRange("15 W", Unit.WATT, 0, 100, "--x"));
        assertEquals(Optional.of(new Range(0.4, 0.6)), Quantities.optionalRange("0.4..0.6", Unit.WATT, 0, 100, "--x"));
        assertEquals(
                Optional.of(new Range(0.4, 0.6)), Quantities.optionalRange("0,4 .. 0,6", Unit.WATT, 0, 100, "--x"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.6..0.4", "1..", "..1", "1..2..3", "1..200", "-1..2", "1-2"})
    void refusesRangesThatAreNone(String text) {
        assertTrue(assertThrows(InputException.class, () -> Quantities.optionalRange(text, Unit.WATT, 0, 100, "--x"))
                .getMessage()
                .startsWith("--x"));
    }

    @Test
    void theEndsBelongToWhatIsAllowed() throws Exception {
        assertEquals(5, Quantities.within("5", Unit.VOLT, 5, 10, "--x"));
        assertEquals(10, Quantities.within("10 V", Unit.VOLT, 5, 10, "--x"));
        assertEquals(OptionalDouble.empty(), Quantities.optionalWithin(null, Unit.VOLT, 5, 10, "--x"));
        assertTrue(assertThrows(InputException.class, () -> Quantities.within("10.1", Unit.VOLT, 5, 10, "--x"))
                .getMessage()
                .contains("between 5 and 10"));
    }
}
