// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

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
import java.util.List;
import java.util.Properties;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.units.text.Language;

class ThermalTextsTest {
    private static final int MOST_PLACES = 8;
    private static final Pattern ASKED = Pattern.compile("TEXTS\\.text\\(\\s*\"([^\"]+)\"\\s*[,)]");
    private static final Path SOURCES = Path.of("src/main/java/org/ohmstead/thermal");

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = FuseBank.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "plan/"})
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces(String folder) throws IOException {
        Properties english = texts(folder + "messages.properties");
        Properties german = texts(folder + "messages_de.properties");
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

    @ParameterizedTest
    @ValueSource(strings = {"", "plan/"})
    void eachTextThatTheCodeAsksForIsThere(String folder) throws IOException {
        Properties english = texts(folder + "messages.properties");
        int asked = 0;
        try (Stream<Path> files = Files.list(SOURCES.resolve(folder))) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".java")).toList()) {
                List<String> keys = ASKED.matcher(Files.readString(file))
                        .results()
                        .map((MatchResult found) -> found.group(1))
                        .toList();
                keys.forEach(key -> assertTrue(english.containsKey(key), file + " asks for " + key));
                asked += keys.size();
            }
        }
        assertTrue(asked > 40, asked + " texts");
    }

    /** A blade fuse at twice its rating opens after 0.15 s to 5 s by ISO 8820-3. */
    @Test
    void saysTheSameInGerman() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "de");
            FuseAnswer.Opens opens = (FuseAnswer.Opens) new FuseBank(FuseKind.BLADE, 30, 2).steady(120);
            assertTrue(
                    opens.reason()
                            .startsWith("Flachsicherung, 2 x 30.0 A: führt 200 % des Nennstroms und löst frühestens"
                                    + " nach 0.150 s aus, spätestens nach 5.00 s; ISO 8820-3"),
                    opens.reason());
            assertTrue(SupplyCautions.batteries().contains("Augenschutz"));
            System.setProperty(Language.PROPERTY, "en");
            opens = (FuseAnswer.Opens) new FuseBank(FuseKind.BLADE, 30, 2).steady(120);
            assertTrue(
                    opens.reason()
                            .startsWith("The blade fuse bank of 2 x 30.0 A carries 200 % of its rating and opens"
                                    + " after 0.150 s at the soonest, within 5.00 s at the latest; ISO 8820-3"),
                    opens.reason());
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }
}
