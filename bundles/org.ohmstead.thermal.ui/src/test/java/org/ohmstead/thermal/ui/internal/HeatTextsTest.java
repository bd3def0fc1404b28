// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatTextsTest {
    private static final int MOST_PLACES = 8;
    private static final Pattern ASKED = Pattern.compile("TEXTS\\.text\\(\\s*\"([^\"]+)\"\\s*[,)]");

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = HeatPage.class.getResourceAsStream(name);
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
            for (int place = 0; place < MOST_PLACES; place++) {
                String argument = "{" + place + "}";
                assertEquals(
                        text.toString().contains(argument),
                        german.getProperty(key.toString()).contains(argument),
                        key + " " + argument);
            }
        });
    }

    @Test
    void eachTextThatTheCodeAsksForIsThere() throws IOException {
        Properties english = texts("messages.properties");
        int asked = 0;
        try (Stream<Path> files = Files.list(Path.of("src/main/java/org/ohmstead/thermal/ui/internal"))) {
            for (Path file : files.toList()) {
                List<String> keys = ASKED.matcher(Files.readString(file))
                        .results()
                        .map(found -> found.group(1))
                        .toList();
                keys.forEach(key -> assertTrue(english.containsKey(key), file + " asks for " + key));
                asked += keys.size();
            }
        }
        assertTrue(asked > 300, asked + " texts");
    }

    /** A group is what begins alike: the fields of a form, or the buttons of a bar. */
    @ParameterizedTest
    @CsvSource({
        "messages.properties, case, 5",
        "messages_de.properties, case, 5",
        "messages.properties, output, 5",
        "messages_de.properties, output, 5",
        "messages.properties, sink, 6",
        "messages_de.properties, sink, 6",
        "messages.properties, pacing, 7",
        "messages_de.properties, pacing, 7",
        "messages.properties, supply, 5",
        "messages_de.properties, supply, 5",
        "messages.properties, form, 16",
        "messages_de.properties, form, 16",
        "messages.properties, bar, 4",
        "messages_de.properties, bar, 4",
        "messages.properties, record, 5",
        "messages_de.properties, record, 5"
    })
    void eachKeyOfALabelLeadsToOneField(String name, String group, int fields) throws IOException {
        Set<Character> taken = new HashSet<>();
        for (Map.Entry<Object, Object> each : texts(name).entrySet()) {
            String text = each.getValue().toString();
            int mnemonic = text.indexOf('&');
            if (each.getKey().toString().startsWith(group + ".") && mnemonic >= 0) {
                char letter = Character.toLowerCase(text.charAt(mnemonic + 1));
                assertTrue(taken.add(letter), each.getKey() + " takes " + letter + " a second time");
            }
        }
        assertEquals(fields, taken.size(), taken.toString());
    }
}
