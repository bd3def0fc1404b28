// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.Arrays;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class MessagesTest {
    private static final int LONG_TEXT = 40;

    private static Properties texts(String file) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = new InputStreamReader(
                MessagesTest.class.getResourceAsStream("internal/" + file), StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    @Test
    void germanSaysAllThatEnglishSays() throws IOException {
        assertEquals(
                new TreeSet<>(texts("messages.properties").stringPropertyNames()),
                new TreeSet<>(texts("messages_de.properties").stringPropertyNames()));
    }

    @Test
    void bothLanguagesFillInTheSameArguments() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        for (String key : english.stringPropertyNames()) {
            assertEquals(arguments(english.getProperty(key)), arguments(german.getProperty(key)), key);
            if (english.getProperty(key).length() > LONG_TEXT && !key.contains(".formula.")) {
                assertNotEquals(english.getProperty(key), german.getProperty(key), key);
            }
        }
    }

    private static Set<String> arguments(String pattern) {
        Set<String> found = new TreeSet<>();
        Arrays.stream(pattern.split("\\{")).skip(1).forEach(part -> found.add(part.substring(0, part.indexOf('}'))));
        return found;
    }

    @Test
    void noApostropheIsLost() throws IOException {
        for (String file : new String[] {"messages.properties", "messages_de.properties"}) {
            Properties texts = texts(file);
            for (String key : texts.stringPropertyNames()) {
                String pattern = texts.getProperty(key);
                String shown = new MessageFormat(pattern, Locale.ROOT).format(new Object[0]);
                assertEquals(pattern.replace("''", "'"), shown, key);
            }
        }
    }

    @Test
    void germanNumbersHaveACommaAndEnglishOnesAPoint() {
        Lesson german =
                Lessons.find(Lessons.builtIn(Locale.GERMAN), "supply-voltage").orElseThrow();
        assertTrue(
                german.at(german.start()).figure("rated").text(german.locale()).contains("165,7"));
        assertTrue(german.at(german.start()).answer().reason().contains("12,6 V"));
        Lesson english = BuiltIn.lesson("supply-voltage");
        assertTrue(english.at(english.start()).answer().reason().contains("12.6 V"));
        assertFalse(english.title().equals(german.title()));
    }

    @Test
    void anotherLanguageGetsEnglish() {
        assertEquals("Load and power", Lessons.builtIn(Locale.FRENCH).get(0).title());
    }
}
