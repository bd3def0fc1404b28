// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import org.junit.jupiter.api.Test;

class PartNamesTest {
    private static final PartNames GERMAN = new PartNames(Speech.in(Locale.GERMAN));
    private static final PartNames ENGLISH = new PartNames(Speech.in(Locale.ENGLISH));

    @Test
    void saysThePartsOfOurMeasurementsInTheLanguageOfTheSheet() {
        assertEquals("Ausgangsspannung, Spezifikation", GERMAN.of("output volts, specification"));
        assertEquals("Lastwiderstand, Erw\u00e4rmung", GERMAN.of("load resistance, heating"));
        assertEquals("Interpolation zwischen Pegeln", GERMAN.of("interpolation between levels"));
        assertEquals("Versorgungsspannung, Drift (2)", GERMAN.of("supply volts, drift (2)"));
    }

    @Test
    void leavesPartsOfOthersAsTheyAre() {
        assertEquals("hum of the hall, drift", GERMAN.of("hum of the hall, drift"));
        assertEquals("hum", GERMAN.of("hum"));
        assertEquals("", GERMAN.of(""));
    }

    @Test
    void saysInEnglishWhatWasLogged() {
        for (String source : new String[] {
            "output volts, specification",
            "output volts, meter temperature",
            "load resistance",
            "load resistance, heating",
            "load leads and contacts",
            "repeatability of the bench",
            "supply volts, resolution (3)"
        }) {
            assertEquals(source, ENGLISH.of(source));
        }
    }
}
