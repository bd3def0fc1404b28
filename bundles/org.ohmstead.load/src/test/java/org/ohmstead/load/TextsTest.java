// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Properties;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.units.text.Language;

class TextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d");

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = LoadPrecautions.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static TreeSet<String> places(String text) {
        return PLACE.matcher(text).results().map(MatchResult::group).collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "drawing/", "search/"})
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces(String folder) throws IOException {
        Properties english = texts(folder + "messages.properties");
        Properties german = texts(folder + "messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            assertEquals(places(english.getProperty(key)), places(german.getProperty(key)), key);
        }
    }

    @Test
    void faultsOfANotationAreSaidInTheReadersLanguage() {
        NotationException ring = Language.speaking(
                Locale.GERMAN,
                () -> assertThrows(NotationException.class, () -> ResistorCode.ofColours("gold gold violet yellow")));
        assertEquals(
                "Zeichen 1: Dieser Ring müsste eine Ziffer sein, gold steht aber für keine. Die Farbe prüfen, oder die"
                        + " Ringe vom anderen Ende her lesen.",
                ring.getMessage());
        NotationException marking = Language.speaking(
                Locale.GERMAN, () -> assertThrows(NotationException.class, () -> ResistorCode.ofLetters("4K7J@50W")));
        assertEquals("In einer Kennzeichnung steht keine Belastbarkeit.", marking.problem());
    }
}
