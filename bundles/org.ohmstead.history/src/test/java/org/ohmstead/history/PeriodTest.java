// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PeriodTest {
    @ParameterizedTest
    @CsvSource({
        "2024, 2024-01-01 to 2024-12-31",
        "2024-02, 2024-02-01 to 2024-02-29",
        "2024-03-09, 2024-03-09",
        "2023-05-01..2024, 2023-05-01 to 2024-12-31",
        "2024.., since 2024-01-01",
        "..2024-02, until 2024-02-29"
    })
    void readsYearsMonthsAndDays(String text, String words) throws HistoryException {
        assertEquals(words, Period.parse(text).words());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "..", "24", "2024-13", "2024-02-30", "2025..2024", "last year"})
    void refusesWhatIsNoPeriod(String text) {
        HistoryException refused = assertThrows(HistoryException.class, () -> Period.parse(text));
        assertTrue(refused.getMessage().startsWith("\"" + text + "\" is not a period."), refused.getMessage());
    }

    @Test
    void holdsItsFirstAndLastDayWhole() throws HistoryException {
        Period period = Period.parse("2024");
        assertTrue(period.contains(Instant.parse("2024-01-01T00:00:00Z")));
        assertTrue(period.contains(Instant.parse("2024-12-31T23:59:59Z")));
        assertFalse(period.contains(Instant.parse("2025-01-01T00:00:00Z")));
        assertTrue(Period.ALWAYS.contains(Instant.EPOCH));
        assertEquals("", Period.ALWAYS.words());
    }
}
