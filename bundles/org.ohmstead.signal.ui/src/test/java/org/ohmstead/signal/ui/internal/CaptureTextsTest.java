// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

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

class CaptureTextsTest {
    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = Texts.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    /** Of the whole bundle: the capture view's, the set-up's and the test signals' texts. */
    @ParameterizedTest
    @ValueSource(strings = {"", "gain/", "stimulus/"})
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces(String folder) throws IOException {
        Properties english = texts(folder + "messages.properties");
        Properties german = texts(folder + "messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        english.forEach((key, text) -> {
            for (String place : List.of("{0}", "{1}", "{2}", "{3}", "{4}")) {
                assertEquals(
                        text.toString().contains(place),
                        german.getProperty(key.toString()).contains(place),
                        key + " " + place);
            }
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"messages.properties", "messages_de.properties"})
    void eachKeyOfALabelLeadsToOneControl(String name) throws IOException {
        Properties texts = texts(name);
        Set<Character> taken = new HashSet<>();
        for (String key : texts.stringPropertyNames()) {
            String text = texts.getProperty(key);
            int mnemonic = text.indexOf('&');
            if (mnemonic >= 0) {
                char letter = Character.toLowerCase(text.charAt(mnemonic + 1));
                assertTrue(taken.add(letter), key + " takes " + letter + " a second time");
            }
        }
        assertEquals(11, taken.size(), taken.toString());
    }

    @Test
    void theWordsOfALevelStandApart() throws IOException {
        assertTrue(texts("messages.properties").getProperty("level.clipped").startsWith("   "));
        assertTrue(texts("messages_de.properties").getProperty("level.endPoint").startsWith("   "));
    }
}
