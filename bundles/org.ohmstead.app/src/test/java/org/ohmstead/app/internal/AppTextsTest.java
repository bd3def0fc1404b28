// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.units.text.Messages;

/** The texts of this bundle in both languages. */
class AppTextsTest {
    private static final Path ROOT = Path.of("src/main/resources/org/ohmstead/app/internal");

    static Stream<Path> packages() throws IOException {
        try (Stream<Path> files = Files.walk(ROOT)) {
            return files.filter(file -> file.endsWith("messages.properties")).map(Path::getParent).toList().stream();
        }
    }

    private static Properties texts(Path folder, String name) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = Files.newBufferedReader(folder.resolve(name))) {
            texts.load(reader);
        }
        return texts;
    }

    @Test
    void eachPackageThatSpeaksHasTexts() throws IOException {
        assertEquals(6, packages().count());
    }

    @ParameterizedTest
    @MethodSource("packages")
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces(Path folder) throws IOException {
        Properties english = texts(folder, "messages.properties");
        Properties german = texts(folder, "messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        english.forEach((key, text) -> {
            for (String place : List.of("{0}", "{1}", "{2}")) {
                assertEquals(
                        text.toString().contains(place),
                        german.getProperty(key.toString()).contains(place),
                        key + " " + place);
            }
            assertEquals(
                    text.toString().indexOf('&') >= 0,
                    german.getProperty(key.toString()).indexOf('&') >= 0,
                    key + " has a key in one language only");
        });
    }

    /** Each of these beginnings of names is that of one group of widgets. */
    @ParameterizedTest
    @ValueSource(strings = {"numbers.", "projects.", "appearance. language.", "language.restart."})
    void eachKeyOfALabelLeadsToOneWidget(String group) throws IOException {
        for (String file : List.of("messages.properties", "messages_de.properties")) {
            Properties texts = texts(ROOT.resolve("part"), file);
            Set<Character> taken = new HashSet<>();
            for (String name : texts.stringPropertyNames()) {
                String text = texts.getProperty(name);
                int key = text.indexOf('&');
                boolean button = name.startsWith("language.restart.") && !group.equals("language.restart.");
                if (key >= 0 && !button && Stream.of(group.split(" ")).anyMatch(name::startsWith)) {
                    assertTrue(taken.add(Character.toLowerCase(text.charAt(key + 1))), file + ": " + text);
                }
            }
            assertTrue(taken.size() >= 2, taken.toString());
        }
    }

    @Test
    void theMenusOfTheWindowHaveKeysOfTheirOwn() {
        Messages german = Messages.of(MenuFrame.class, Locale.GERMAN);
        List<String> menus = Stream.of("file", "edit", "bench", "window", "help")
                .map(name -> german.text("menu." + name))
                .toList();
        assertEquals(List.of("&Datei", "&Bearbeiten", "&Messplatz", "&Fenster", "&Hilfe"), menus);
    }
}
