// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.MissingResourceException;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;

final class MessagesTest {
    private static final Locale AUSTRIA = Locale.forLanguageTag("de-AT");

    @Test
    void saysTheTextOfTheLanguage() {
        assertEquals("Supply", english().text("plain"));
        assertEquals("Versorgung", german().text("plain"));
        assertEquals("3 dB of headroom, channel's own", english().text("headroom", "3 dB"));
        assertEquals("3 dB Reserve für den Kanal", german().text("headroom", "3 dB"));
    }

    @Test
    void aConstantFollowsTheLanguageSpoken() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "en");
            Messages kept = Messages.of(MessagesTest.class);
            assertEquals("Supply", kept.text("plain"));
            System.setProperty(Language.PROPERTY, "de");
            assertEquals("Versorgung", kept.text("plain"));
            assertEquals(Locale.GERMAN, kept.locale());
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }

    @Test
    void speaksAnotherLanguageForAWhileOnThisThreadOnly() throws Exception {
        Messages live = Messages.of(MessagesTest.class);
        Locale before = Language.current();
        String inner = Language.speaking(Locale.GERMAN, () -> {
            CompletableFuture<Locale> elsewhere = CompletableFuture.supplyAsync(Language::current);
            assertEquals(before, elsewhere.get());
            assertEquals("Supply", Language.speaking(Locale.ENGLISH, () -> live.text("plain")));
            return live.text("plain");
        });
        assertEquals("Versorgung", inner);
        assertThrows(
                IllegalStateException.class,
                () -> Language.speaking(Locale.GERMAN, () -> {
                    throw new IllegalStateException("the work fails");
                }));
        assertEquals(before, Language.current());
    }

    @Test
    void saysInEnglishWhatALanguageLacks() {
        assertEquals("only English", german().text("english"));
        assertEquals("Supply", Messages.of(MessagesTest.class, Locale.FRENCH).text("plain"));
    }

    /** The form of numbers of English and German is that of the Unicode CLDR, which the Java runtime holds. */
    @Test
    void writesNumbersAsTheLanguageDoes() {
        assertEquals("1,234.5 W", english().text("watts", 1234.5));
        assertEquals("1.234,5 W", german().text("watts", 1234.5));
    }

    @Test
    void namesATextThatIsMissing() {
        MissingResourceException missing =
                assertThrows(MissingResourceException.class, () -> english().text("nothing"));
        assertEquals("nothing", missing.getKey());
        assertFalse(english().has("nothing"));
        assertTrue(german().has("english"));
    }

    @Test
    void takesTheWishThenTheMachineThenEnglish() {
        assertEquals(Locale.GERMAN, Language.choose("de", Locale.ENGLISH));
        assertEquals(AUSTRIA, Language.choose("de_AT", Locale.ENGLISH));
        assertEquals(Locale.ENGLISH, Language.choose("fr", AUSTRIA));
        assertEquals(AUSTRIA, Language.choose(null, AUSTRIA));
        assertEquals(Locale.UK, Language.choose(" ", Locale.UK));
        assertEquals(Locale.ENGLISH, Language.choose(null, Locale.FRENCH));
    }

    private static Messages english() {
        return Messages.of(MessagesTest.class, Locale.ENGLISH);
    }

    private static Messages german() {
        return Messages.of(MessagesTest.class, Locale.GERMAN);
    }
}
