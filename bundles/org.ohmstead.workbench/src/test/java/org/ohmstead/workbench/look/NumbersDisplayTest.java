// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;

/** How numbers and uncertainties follow what the user chose. */
class NumbersDisplayTest {
    @AfterEach
    void asUsual() {
        Numbers.useDecimalComma(false);
        Coverage.use(Coverage.USUAL_FACTOR);
    }

    private static List<String> samples() {
        return List.of(
                Numbers.shown(13.8),
                Numbers.shown(0.0047, Unit.OHM),
                Numbers.digits(90, 3),
                Numbers.digits(0.0047, Unit.OHM, 3),
                Numbers.percent(0.005),
                Numbers.format("%s %.2f V, %d", "a.wav", -1234.5, 10000),
                Measure.of(Unit.VOLT).rounded(13.804, 3));
    }

    @Test
    void theDecimalSignIsTheOneThatTheUserChose() {
        assertEquals(
                List.of("13.8", "4.7 m\u03a9", "90.0", "4.70 m\u03a9", "0.5 %", "a.wav -1234.50 V, 10000", "13.8"),
                samples());
        Numbers.useDecimalComma(true);
        assertEquals(
                List.of("13,8", "4,7 m\u03a9", "90,0", "4,70 m\u03a9", "0,5 %", "a.wav -1234,50 V, 10000", "13,8"),
                samples());
    }

    @Test
    void whatLeavesTheScreenKeepsThePoint() {
        List<String> usual = samples();
        Numbers.useDecimalComma(true);
        assertEquals(usual, Numbers.withPoint(NumbersDisplayTest::samples));
        assertEquals("13.8", Numbers.withPoint(() -> Numbers.withPoint(() -> "") + Numbers.shown(13.8)));
        assertThrows(
                IllegalArgumentException.class, () -> Numbers.withPoint(() -> Numbers.shown(Double.POSITIVE_INFINITY)));
        assertEquals("13,8", Numbers.shown(13.8));
        assertEquals("13.8", Numbers.exact(13.8));
        assertEquals("13.8", Measure.of(Unit.VOLT).exact(13.8));
    }

    @Test
    void aSentenceHasTheSignOnlyWithinItsNumbers() {
        String sentence = "P = 0.52 V^1.98 W. At 14 V. It holds.";
        assertEquals(sentence, Numbers.inSentence(sentence));
        Numbers.useDecimalComma(true);
        assertEquals("P = 0,52 V^1,98 W. At 14 V. It holds.", Numbers.inSentence(sentence));
    }

    // Shares of a normal distribution within 1, 2 and 3 standard deviations: 68.27 %, 95.45 %, 99.73 % (any table).
    @ParameterizedTest
    @CsvSource({
        "1, 0.5, Standard, 'k = 1, 68 %'",
        "2, 1.0, Expanded, 'k = 2, 95 %'",
        "3, 1.5, Expanded, 'k = 3, 99,7 %'"
    })
    void uncertaintiesAreWidenedByTheFactor(int factor, double expanded, String adjective, String words) {
        Numbers.useDecimalComma(true);
        Coverage.use(factor);
        assertEquals(expanded, Coverage.expanded(0.5));
        assertEquals(adjective, Coverage.adjective());
        assertEquals(words, Coverage.wordsWithShare());
        assertEquals("k = " + factor, Coverage.words());
    }

    @ParameterizedTest
    @CsvSource({"0", "4", "-1"})
    void refusesOtherFactors(int factor) {
        assertThrows(IllegalArgumentException.class, () -> Coverage.use(factor));
        assertEquals(2, Coverage.factor());
    }
}
