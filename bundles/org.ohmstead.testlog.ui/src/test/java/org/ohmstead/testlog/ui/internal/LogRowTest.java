// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.look.Stated;

class LogRowTest {
    private static final LogRow ROW = Samples.row(Samples.entry(7, Samples.reading("s1", Mode.STEREO, 4, 13.5, 97.26)));

    // The weakest channel, B, gives 2 W less. Expanded uncertainty k = 2 of 0.5 W is 1.0 W: two digits, and the power
    // to the same
    // place (GUM 7.2.6).
    @ParameterizedTest
    @CsvSource({
        "NUMBER, R0007",
        "STATE, valid",
        "TIME, 2026-03-02 09:13",
        "STEP, s1",
        "MODE, stereo",
        "LOAD, 4",
        "SUPPLY, 13.50",
        "CHANNEL, B",
        "POWER, 95.3",
        "UNCERTAINTY, 1.0",
        "DISTORTION, 1.0",
        "END_POINT, 1 % THD_F",
        "OUTCOME, reached",
        "OPERATOR, N. N."
    })
    void saysWhatTheWeakestChannelGave(LogColumn column, String text) {
        assertEquals(text, ROW.cell(column));
    }

    @Test
    void eachStateHasItsWord() {
        assertEquals(
                RowState.VOIDED,
                Samples.row(Samples.voidedEntry(1, Samples.six().get(0))).state());
        assertEquals(RowState.UNREADABLE, Samples.row(Samples.unreadable(2)).state());
        assertEquals(RowState.NOTE, Samples.row(Samples.note(3, "Fan on")).state());
        assertEquals(RowState.VOIDING, Samples.row(Samples.voiding(4, "R0001")).state());
        assertEquals("Fan on", Samples.row(Samples.note(3, "Fan on")).cell(LogColumn.STEP));
        assertEquals(
                "R0001: A lead was loose",
                Samples.row(Samples.voiding(4, "R0001")).cell(LogColumn.STEP));
    }

    @Test
    void theHoverOfThePowerHoldsEveryChannelWithBothUncertainties() {
        String hover = ROW.hover(LogColumn.POWER, Optional.empty());
        List<String> lines = List.of(hover.split("\n"));
        assertEquals(2, lines.size());
        assertTrue(
                lines.get(0).startsWith("A: 97.3\u00a0\u00b1\u00a01.0 W (k = 2); standard uncertainty 0.50 W"), hover);
        assertTrue(lines.get(1).startsWith("B: 95.3\u00a0\u00b1\u00a01.0 W"), hover);
    }

    @Test
    void theHoverOfTheStateSaysWhyAnEntryWasVoided() {
        LogEntry voided = Samples.voidedEntry(1, Samples.six().get(0));
        String hover = Samples.row(voided).hover(LogColumn.STATE, Optional.of(voided));
        assertTrue(hover.contains("V0099") && hover.contains("A lead was loose") && hover.contains("M. M."), hover);
    }

    // Rounding by GUM 7.2.6: the uncertainty to two digits, the value to the same place.
    @ParameterizedTest
    @CsvSource({"97.262, 0.5, 97.3, 1.0", "333.517, 8.2, 334, 16", "4.00412, 0.0021, 4.0041, 0.0042", "52, 0, 52.00, ''"
    })
    void statesValuesWithTheirUncertainty(double value, double standard, String text, String expanded) {
        assertEquals(new Stated(text, expanded), Figures.stated(value, standard));
    }

    @Test
    void copiesRowsAsColumnsBetweenTabs() {
        String text = TabText.of(List.of(ROW, Samples.row(Samples.note(8, "two\nlines\tand a tab"))));
        List<String> lines = text.lines().toList();
        assertEquals(3, lines.size());
        for (String line : lines) {
            assertEquals(LogColumn.values().length, line.split("\t", -1).length, line);
        }
        assertTrue(lines.get(0).startsWith("Entry\tState\tTaken (UTC)"), lines.get(0));
        assertTrue(lines.get(2).contains("two lines and a tab"), lines.get(2));
    }
}
