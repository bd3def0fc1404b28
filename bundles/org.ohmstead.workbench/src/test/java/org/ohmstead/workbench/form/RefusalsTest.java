// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Range;
import org.ohmstead.model.Supply;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Numbers;

/** What is refused is said in the language of the person at the field, whatever the records of the model say. */
class RefusalsTest {
    private final String before = System.getProperty(Language.PROPERTY);

    @BeforeEach
    void withPoint() {
        Numbers.useDecimalComma(false);
    }

    @AfterEach
    void asUsual() {
        withPoint();
        speak(before);
    }

    private static void speak(String language) {
        if (language == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, language);
        }
    }

    private static String said(String language, Runnable refused) {
        speak(language);
        return Refusals.sentence(assertThrows(IllegalArgumentException.class, refused::run));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "loadOhms is -4.0; it must be a finite number above 0"
                        + "|It must be a number above 0.|Hier muss eine Zahl \u00fcber 0 stehen.",
                "gain is NaN; it must be a finite number|It must be a number.|Hier muss eine Zahl stehen.",
                "ratio is 2.0; it must lie between 0.0 and 1.5"
                        + "|It must lie between 0.0 and 1.5.|Der Wert muss zwischen 0,0 und 1,5 liegen.",
                "name is blank; it needs a text|It needs a text.|Hier muss ein Text stehen.",
                "supply is missing|It must not be missing.|Diese Angabe fehlt.",
                "riskRatio is 1.0; it must be above 0 and at most 0.5|It must be above 0 and at most 0.5.|Der Wert"
                        + " muss \u00fcber 0 liegen und darf h\u00f6chstens 0,5 sein.",
                "A reading of mine is strange; it may well be wrong|It may well be wrong.|It may well be wrong.",
                "Etwas ganz anderes|Etwas ganz anderes.|Etwas ganz anderes."
            })
    void aDemandIsSaidInBothLanguages(String message, String english, String german) {
        Runnable refused = () -> {
            throw new IllegalArgumentException(message);
        };
        assertEquals(english, said("en", refused));
        Numbers.useDecimalComma(true);
        assertEquals(german, said("de", refused));
    }

    @Test
    void whatTheModelReallySaysIsKnown() {
        Runnable supply = () -> new Supply("Bank", 12, 10, 100);
        assertEquals("It must be above lowestVolts, which is 12.0.", said("en", supply));
        assertEquals(
                "Der Wert muss gr\u00f6\u00dfer sein als die niedrigste Spannung, also als 12.0.", said("de", supply));
        Runnable range = () -> new Range(3, 2);
        assertEquals("It must be at least low, which is 3.0.", said("en", range));
        assertEquals("Der Wert muss mindestens so gro\u00df sein wie die untere Grenze, also 3.0.", said("de", range));
        assertEquals(
                "Hier muss eine Zahl \u00fcber 0 stehen.", said("de", () -> new Cable(-1, 2, OptionalDouble.empty())));
    }

    @Test
    void aSentenceQuotesInEitherLanguagesMarks() {
        assertTrue(Refusals.quotes("\u201ezwei\u201c passt nicht."));
        assertTrue(Refusals.quotes("\"two\" does not fit.", "two"));
        assertTrue(Refusals.quotes("\u201ezwei\u201c passt nicht.", "zwei"));
        assertFalse(Refusals.quotes("\u201ezwei\u201c passt nicht.", "drei"));
        assertFalse(Refusals.quotes("It must be a number."));
    }
}
