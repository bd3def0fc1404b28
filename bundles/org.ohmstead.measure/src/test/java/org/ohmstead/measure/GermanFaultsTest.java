// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Said;

/** What goes wrong is kept in English and shown in German. */
class GermanFaultsTest {
    private static final List<Setting> SETTINGS = List.of(
            new Setting.Number("watts", "Leistung", "Wie viel.", Unit.WATT, 1, 0.5, 20),
            new Setting.Count("repeats", "Wiederholungen", "Wie oft.", 3, 2, 50));

    private static <E extends Exception> void inGerman(Language.Work<Object, E> work) throws E {
        Language.speaking(Locale.GERMAN, work);
    }

    @Test
    void aFailureHasAMessageForTheLogAndOneForTheReader() {
        inGerman(() -> {
            IOException cause = new IOException("gone");
            MeasurementException failed = MeasurementException.of(
                    () -> Language.current().equals(Locale.GERMAN) ? "Kein Ton." : "No tone.", cause);
            assertEquals("No tone.", failed.getMessage());
            assertEquals("Kein Ton.", failed.getLocalizedMessage());
            assertSame(cause, failed.getCause());
            assertEquals("Kein Ton.", MeasurementException.of(Said.by(failed)).getLocalizedMessage());
            assertEquals("Plain.", new MeasurementException("Plain.").getLocalizedMessage());
            return null;
        });
    }

    @Test
    void saysInGermanWhatASettingMayBe() {
        inGerman(() -> {
            SettingException wrong = assertThrows(
                    SettingException.class,
                    () -> Settings.of(SETTINGS, Map.of("watts", "30", "repeats", "1", "volume", "11")));
            assertEquals(
                    "Wiederholungen: „1“ passt nicht; erlaubt ist eine ganze Zahl von 2 bis 50."
                            + " Es gibt keine Einstellung „volume“; vorhanden: [watts, repeats]."
                            + " Leistung: „30“ passt nicht; erlaubt ist ein Wert zwischen 0,5 und 20,0 W.",
                    wrong.getMessage());
            return null;
        });
    }

    @Test
    void aRefusalInEnglishIsAsItWas() {
        assertEquals(
                "Leistung is \"30\"; it must be between 0.5 and 20.0 W.",
                assertThrows(SettingException.class, () -> Settings.of(SETTINGS, Map.of("watts", "30")))
                        .getMessage());
    }
}
