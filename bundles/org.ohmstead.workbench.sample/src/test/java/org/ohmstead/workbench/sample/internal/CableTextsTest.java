// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.Properties;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Numbers;

/** Both languages say the same, and German is really spoken. */
class CableTextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{(\\d+)");

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = CableDropPage.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static Set<String> places(String text) {
        return PLACE.matcher(text)
                .results()
                .map((MatchResult found) -> found.group(1))
                .collect(Collectors.toSet());
    }

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            String said = english.getProperty(key);
            String translated = german.getProperty(key);
            assertFalse(translated.isBlank(), key);
            assertEquals(places(said), places(translated), key);
            assertDoesNotThrow(() -> new MessageFormat(said), key);
            assertDoesNotThrow(() -> new MessageFormat(translated), key);
        }
    }

    @Test
    void aProblemIsGermanForThoseWhoReadGerman() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "de");
            Numbers.useLanguagesSign();
            assertEquals(
                    "Bei den 60,00 A der Sicherungen des Verst\u00e4rkers nimmt das Versorgungskabel 0,60 V weg, mehr"
                            + " als die erlaubten 0,50 V.",
                    CableDropProblems.problems(new CableDrop(60, 0.010), 0.5)
                            .get(0)
                            .what());
            assertEquals("Versorgungskabel", new CableDropPage().name());
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }
}
