// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LessonTextsTest {
    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = LessonComposite.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        english.forEach((key, text) -> {
            for (String place : List.of("{0}", "{1}", "{2}", "{3}")) {
                assertEquals(
                        text.toString().contains(place),
                        german.getProperty(key.toString()).contains(place),
                        key + " " + place);
            }
        });
    }

    @Test
    void everyStepHasAName() throws IOException {
        for (PresenterStep.Kind kind : PresenterStep.Kind.values()) {
            assertTrue(texts("messages.properties").containsKey("step." + kind.name()), kind.name());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"messages.properties", "messages_de.properties"})
    void eachKeyOfALabelLeadsToOneButtonOrItem(String name) throws IOException {
        Properties texts = texts(name);
        List<String> buttons = List.of(
                "list.again", "head.present", "head.sheet", "flow.check", "flow.again", "flow.over", "sheet.open");
        List<String> items = List.of(
                "sheet.exercise.project", "sheet.exercise.file", "sheet.solution.project", "sheet.solution.file");
        assertEquals(buttons.size(), mnemonics(texts, buttons).size());
        assertEquals(items.size(), mnemonics(texts, items).size());
    }

    private static Set<Character> mnemonics(Properties texts, List<String> keys) {
        Set<Character> taken = new HashSet<>();
        for (String key : keys) {
            String text = texts.getProperty(key);
            int mnemonic = text.indexOf('&');
            assertTrue(mnemonic >= 0, key);
            char letter = Character.toLowerCase(text.charAt(mnemonic + 1));
            assertTrue(taken.add(letter), key + " takes " + letter + " a second time");
        }
        return taken;
    }
}
