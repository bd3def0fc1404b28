// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How a plan's times and names are put for people. */
class PlanTextTest {
    @ParameterizedTest
    @CsvSource({"0,0:00:00", "59.2,0:01:00", "60,0:01:00", "3600.0000001,1:00:00", "5025,1:23:45", "90000,25:00:00"})
    void timesAreHoursMinutesAndSecondsRoundedUp(double seconds, String clock) {
        assertEquals(clock, PlanText.clock(seconds));
    }

    @ParameterizedTest
    @CsvSource({"0.15,0.150 s", "12,12.0 s", "600,10.0 min", "360000,100 h"})
    void timesHaveTheUnitThatFits(double seconds, String text) {
        assertEquals(text, Texts.time(seconds));
    }

    @Test
    void longListsOfNamesAreCutShort() {
        assertEquals("a, b", Texts.some(List.of("a", "b")));
        assertEquals(
                "1, 2, 3, 4, 5, 6, 7, 8 and 2 more",
                Texts.some(List.of("1", "2", "3", "4", "5", "6", "7", "8", "9", "10")));
    }
}
