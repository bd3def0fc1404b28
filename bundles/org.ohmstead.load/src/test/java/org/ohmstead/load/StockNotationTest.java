// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StockNotationTest {
    @Test
    void readsValuesCountsTolerancesAndRatings() throws NotationException {
        Stock stock = StockNotation.parse("2R7, 3R9,5R6x2 ,10,8R2J@50Wx3,10X2", 0.01);
        assertEquals(5, stock.items().size());
        assertEquals(1 + 1 + 2 + 3 + 3, stock.pieces());
        assertEquals(5.6, stock.find("5R6").orElseThrow().resistor().ohms());
        assertEquals(0.01, stock.find("5R6").orElseThrow().resistor().toleranceRatio());
        Stock.Item rated = stock.find("8R2J@50W").orElseThrow();
        assertEquals(3, rated.count());
        assertEquals(0.05, rated.resistor().toleranceRatio());
        assertEquals(new PowerRating(50, 25, 250), rated.resistor().rating().orElseThrow());
        assertEquals(3, stock.find("10").orElseThrow().count());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '~',
            value = {
                "~~; 0; A value is missing here.; 8R2",
                "2R7,,3; 4; A value is missing here.; comma",
                "2R7,3R9,; 8; A value is missing here.; comma",
                "2R7,0; 4; A resistance of 0 ohm short-circuits what it lies across.; above 0",
                "2R7,-3; 4; A resistance cannot be negative.; as 3",
                "2R7,4q7; 5; \"q\" does not belong here.; 8R2",
                "2R7x0; 4; After x comes the number of pieces, at least 1.; 5R6x2",
                "2R7x; 4; After x comes the number of pieces, at least 1.; 5R6x2",
                "2R7x2a; 5; After x comes the number of pieces, in digits alone.; 5R6x2",
                "2R7x99999999999; 4; These are more than 10000 pieces of one kind.; at most",
                "2R7x9999,2R7x2; 13; These are more than 10000 pieces of one kind.; at most",
                "x3; 0; A number is missing here.; 8R2"
            })
    void saysWhereAndWhatInstead(String text, int position, String problem, String remedyHolds) {
        NotationException fault = assertThrows(NotationException.class, () -> StockNotation.parse(text, 0.05));
        assertEquals(problem, fault.problem());
        assertEquals(position, fault.position());
        assertTrue(fault.remedy().contains(remedyHolds), fault.remedy());
    }

    @Test
    void boundsTheLength() {
        NotationException fault =
                assertThrows(NotationException.class, () -> StockNotation.parse("5,".repeat(100_000), 0.05));
        assertEquals(NetworkNotation.LONGEST, fault.position());
    }
}
