// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.thermal.HeatReading;
import org.ohmstead.thermal.PowerStep;

class LoggedWarmthTest {
    private static final List<HeatReading> TWO = List.of(new HeatReading(0, 21.5), new HeatReading(60, 23));

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0,21.5\n60,23",
                "time_s,case_C\r\n0, 21.5\r\n60, 23\r\n",
                "# bench 2\n\nt; T\n0;21,5\n60;23,0",
                "0\t21,5\n60\t23",
                "0 21.5\n60   23",
                "time (min);case\n0;21.5\n1;23",
                "clock;case\n10:15:30;21.5\n10:16:30;23",
                "15:30,21.5\n16:30,23"
            })
    void readsWhatLoggersAndSpreadsheetsWrite(String text) {
        LoggedWarmth log = LoggedWarmth.read(text);
        assertEquals(TWO, log.readings());
        assertEquals(Optional.empty(), log.powers());
    }

    @Test
    void theHeatHoldsUntilItChanges() {
        LoggedWarmth log = LoggedWarmth.read("0;20;50\n10;21;50\n20;22;0\n30;22;0");
        assertEquals(
                List.of(new PowerStep(20, 50), new PowerStep(10, 0)),
                log.powers().orElseThrow().steps());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0;20^60;warm | Line 2: \"warm\" is no temperature",
                "0;20^60 | Line 2 has 1 figure",
                "0;20^60;21;5 | Line 2 has 3 figures, the lines before it have another number",
                "0;20;-5 | Line 1: the heat must not be below 0 W",
                "-60;20 | Reading 1 lies before the start",
                "12a;20 | Line 1: \"12a\" is no time",
                "0;1e12 | the temperature is too large"
            })
    void namesTheLineAndWhatWouldBeRight(String text, String said) {
        String lines = text.replace('^', '\n');
        String message = assertThrows(IllegalArgumentException.class, () -> LoggedWarmth.read(lines))
                .getMessage();
        assertTrue(message.contains(said), message);
    }

    @Test
    void refusesMoreThanItCanFit() {
        String many = "0;20\n".repeat(LoggedWarmth.MOST_READINGS + 1);
        assertTrue(assertThrows(IllegalArgumentException.class, () -> LoggedWarmth.read(many))
                .getMessage()
                .contains("leave out most"));
    }
}
