// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Language;

/** Both languages say the same things, and what is refused is said in the reader's. */
class TextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d+");

    @TempDir
    private Path folder;

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = TextsTest.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static Set<String> places(String text) {
        return PLACE.matcher(text).results().map(MatchResult::group).collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/org/ohmstead/history/", "/org/ohmstead/history/internal/", "/org/ohmstead/history/quality/"})
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces(String folder) throws IOException {
        Properties english = texts(folder + "messages.properties");
        Properties german = texts(folder + "messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            assertEquals(places(english.getProperty(key)), places(german.getProperty(key)), key);
            assertFalse(german.getProperty(key).isBlank(), key);
        }
    }

    @Test
    void whatIsRefusedIsSaidInGerman() throws Exception {
        Path index = Files.writeString(folder.resolve("index.csv"), "period,index\n2024,104.7\n2024,105\n");
        Language.speaking(Locale.GERMAN, () -> {
            assertEquals(
                    "Zu vergleichen sind 0 Verst\u00e4rker oder Zeitr\u00e4ume; 1 bis 10 lassen sich auf einmal"
                            + " vergleichen. Einige davon w\u00e4hlen.",
                    assertThrows(
                                    HistoryException.class,
                                    () -> Comparison.of(List.of(), ComparisonRequest.at(14.4, 4, Mode.STEREO)))
                            .getMessage());
            assertEquals(
                    "Zeile 3 des Preisindexes index.csv nennt 2024 ein zweites Mal. Berichtigen.",
                    assertThrows(HistoryException.class, () -> PriceIndex.read(index))
                            .getMessage());
            return null;
        });
    }
}
