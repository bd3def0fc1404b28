// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class RowShapeTest {
    private static boolean isTime(String text) {
        return RowShape.isTime(text.getBytes(StandardCharsets.UTF_8));
    }

    /** The calendar is that of java.time: what it reads and writes back the same is a time. */
    private static boolean isWrittenSo(String text) {
        try {
            return Instant.parse(text).toString().equals(text);
        } catch (DateTimeException none) {
            return false;
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1900, 2000, 2023, 2024})
    void knowsEachDayOfTheCalendarAndNoOther(int year) {
        int days = 0;
        for (int month = 0; month <= 13; month++) {
            for (int day = 0; day <= 32; day++) {
                String text = String.format("%04d-%02d-%02dT12:34:56.789Z", year, month, day);
                assertEquals(isWrittenSo(text), isTime(text), text);
                days += isTime(text) ? 1 : 0;
            }
        }
        assertEquals(year % 400 == 0 || year % 4 == 0 && year % 100 != 0 ? 366 : 365, days);
    }

    @Test
    void knowsATimeInItsOneForm() {
        assertTrue(isTime("2026-01-31T23:59:59Z"));
        assertTrue(isTime("2026-01-31T23:59:59.000001Z"));
        for (String other : new String[] {
            "2026-01-31T24:00:00Z",
            "2026-01-31T23:59:59.000Z",
            "2026-01-31T23:59:59+00:00",
            "2026-01-31 23:59:59Z",
            "2026-01-31T23:59:5\u0661Z",
            ""
        }) {
            assertFalse(isTime(other), other);
        }
    }
}
