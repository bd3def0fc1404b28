// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.session.DisplaySettings;

/** Numbers follow the language until the user chooses a decimal sign. */
class LanguageSignTest {
    private final String before = System.getProperty(Language.PROPERTY);

    @AfterEach
    void asUsual() {
        Numbers.useDecimalComma(false);
        speak(before);
    }

    private static void speak(String language) {
        if (language == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, language);
        }
    }

    @Test
    void theSignIsThatOfTheLanguageUnlessOneWasChosen() {
        Numbers.useLanguagesSign();
        speak("en");
        assertEquals("13.8", Numbers.shown(13.8));
        speak("de");
        assertEquals("13,8", Numbers.shown(13.8));
        assertEquals("13.8", Numbers.withPoint(() -> Numbers.shown(13.8)));
        speak("de-CH");
        assertEquals("13.8", Numbers.shown(13.8), "Swiss numbers have a point");
        Numbers.useDecimalComma(true);
        assertEquals("13,8", Numbers.shown(13.8));
        Numbers.useDecimalComma(false);
        speak("de");
        assertEquals("13.8", Numbers.shown(13.8));
        assertEquals(new DisplaySettings(2, true), DisplaySettings.asLanguage(2));
    }

    @Test
    void nounsKeepTheirCapitalsInGermanOnly() {
        speak("en");
        assertEquals("supply volts", Labels.inSentence("Supply volts"));
        speak("de");
        assertEquals("Versorgungsspannung", Labels.inSentence("Versorgungsspannung"));
    }
}
