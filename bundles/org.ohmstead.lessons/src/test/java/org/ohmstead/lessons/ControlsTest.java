// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.units.Unit;

class ControlsTest {
    private static final Control.Slider LOAD = new Control.Slider("load", "Load", Unit.OHM, 1, 16, 4, true, 0, 3);
    private static final Control.Slider SUPPLY =
            new Control.Slider("supply", "Supply", Unit.VOLT, 10, 16, 14.4, false, 0.1, 3);
    private static final Control.Choice MODE = new Control.Choice(
            "mode", "Mode", List.of(new Option("one", "one channel"), new Option("bridged", "bridged")), 0);
    private static final Control.Switch FAN = new Control.Switch("fan", "Fan", "on", "off", true);
    private static final Controls START = Controls.startOf(List.of(LOAD, SUPPLY, MODE, FAN));

    @Test
    void startsWhereTheControlsSay() {
        assertEquals(4, START.number("load"), 0);
        assertEquals("one", START.chosen("mode"));
        assertTrue(START.isOn("fan"));
        assertEquals("14.4 V", START.text("supply", Locale.ENGLISH));
        assertEquals("14,4 V", START.text("supply", Locale.GERMAN));
        assertEquals("one channel", START.text("mode", Locale.ENGLISH));
    }

    @Test
    void aLogarithmicSliderHasEqualRatios() {
        // 4 is the geometric mean of 1 and 16.
        assertEquals(4, LOAD.atPlace(0.5), 1e-12);
        assertEquals(0.5, LOAD.placeOf(4), 1e-12);
        assertEquals(13, SUPPLY.atPlace(0.5), 1e-12);
        assertEquals(16, LOAD.atPlace(7), 1e-12);
        assertEquals(0, SUPPLY.placeOf(-100), 0);
    }

    @Test
    void valuesFallOnStepsAndIntoTheRange() {
        assertEquals(12.6, START.with("supply", 12.638).number("supply"), 1e-9);
        assertEquals(16, START.with("supply", 99).number("supply"), 0);
        assertEquals(1, START.with("mode", 5).number("mode"), 0);
        assertFalse(START.with("fan", 0).isOn("fan"));
        assertEquals(4, START.number("load"), 0);
    }

    @Test
    void readsWhatPeopleWrite() throws LessonException {
        assertEquals(2.2, START.withText("load", "2R2").number("load"), 1e-12);
        assertEquals(13.8, START.withText("supply", "13,8 V").number("supply"), 1e-9);
        assertEquals("bridged", START.withText("mode", "bridged").chosen("mode"));
        assertFalse(START.withText("fan", "off").isOn("fan"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "load; 0.5; from 1",
                "load; 2 V; no value of 'load'",
                "load; much; no value of 'load'",
                "mode; both; one, bridged",
                "fan; yes; on or off",
                "volume; 3; load, supply, mode, fan",
            })
    void saysWhatWouldBeRight(String id, String text, String part) {
        LessonException wrong = assertThrows(LessonException.class, () -> START.withText(id, text));
        assertTrue(wrong.getMessage().contains(part), wrong.getMessage());
    }

    @Test
    void refusesWhatAProgrammerGotWrong() {
        assertThrows(IllegalArgumentException.class, () -> START.number("volume"));
        assertThrows(IllegalArgumentException.class, () -> START.chosen("load"));
        assertThrows(IllegalArgumentException.class, () -> START.isOn("load"));
        assertThrows(IllegalArgumentException.class, () -> START.withChosen("mode", "both"));
        assertThrows(IllegalArgumentException.class, () -> START.with("load", Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Controls.startOf(List.of(LOAD, LOAD)));
        assertThrows(
                IllegalArgumentException.class, () -> new Control.Slider("x", "X", Unit.OHM, 0, 1, 0.5, true, 0, 3));
        assertThrows(
                IllegalArgumentException.class, () -> new Control.Slider("x", "X", Unit.OHM, 1, 1, 1, false, 0, 3));
        assertThrows(IllegalArgumentException.class, () -> LOAD.withRange(1, 2, 3));
        Lesson lesson = BuiltIn.lesson("decibels");
        assertThrows(IllegalArgumentException.class, () -> lesson.at(START));
    }

    @Test
    void equalValuesAreEqual() {
        assertEquals(START, START.with("load", 8).with("load", 4));
        assertEquals(START.hashCode(), START.with("load", 8).with("load", 4).hashCode());
        assertNotEquals(START, START.with("load", 8));
    }
}
