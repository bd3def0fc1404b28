// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.units.text.Language;

class TextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d+");
    private static final Pattern FIELD = Pattern.compile("\"(field\\.[A-Za-z.]+|file\\.label\\.[a-z]+)\"");

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
    @ValueSource(strings = {"/org/ohmstead/model/json/", "/org/ohmstead/model/json/internal/"})
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
    void everyFieldThatIsReadHasAText() throws IOException {
        Properties english = texts("/org/ohmstead/model/json/internal/messages.properties");
        Set<String> named = new TreeSet<>();
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".java")).toList()) {
                FIELD.matcher(Files.readString(file)).results().forEach(found -> named.add(found.group(1)));
            }
        }
        assertTrue(named.size() > 200, named.size() + " fields");
        named.removeAll(english.keySet());
        assertEquals(Set.of(), named);
    }

    private static String fault(Path file, String content) throws IOException {
        Files.writeString(file, content);
        return Language.speaking(
                Locale.GERMAN, () -> assertThrows(ProjectFileException.class, () -> StockFile.read(file))
                        .getMessage());
    }

    private static final String PART =
            """
            [{"id": "%s", "ohms": %s, "toleranceRatio": 0.05, "ratedWatts": 100, "ratedToCelsius": 25,
              "zeroPowerCelsius": 250, "mounting": "heatSink", "count": 4}]
            """;

    @Test
    void faultsOfAFileAreSaidInTheReadersLanguage(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("stock.json");
        assertEquals(
                "stock.json, Zeile 1, Spalte 23, $[0].ohms: der Wert ist \"viel\", nötig ist aber eine Zahl:"
                        + " Widerstand in Ohm über 0, zum Beispiel 8.2.",
                fault(file, PART.formatted("R1", "\"viel\"")));
        assertEquals(
                "stock.json, Zeile 1, Spalte 23, $[0].ohms: ohms ist -8.2; nötig ist eine endliche Zahl über 0"
                        + " (Widerstand in Ohm über 0, zum Beispiel 8.2).",
                fault(file, PART.formatted("R1", "-8.2")));
        assertEquals(
                "stock.json, Zeile 1, Spalte 2, $[0].toleranceRatio: das Feld fehlt; nötig ist eine Zahl: Toleranz als"
                        + " Verhältnis, 0.05 für 5 %.",
                fault(file, "[{\"id\": \"R1\", \"ohms\": 8.2}]"));
        assertEquals(file + " enthält kein Bauteil. Mindestens einen Widerstand eintragen.", fault(file, "[]"));
    }

    @Test
    void whoHoldsALockIsSaidInTheReadersLanguage() {
        LockOwner owner = LockOwner.parse("process 4711 on bench2, user lab, since 2026-03-02T09:14:05Z");
        assertEquals(
                List.of("Prozess 4711 auf bench2", "Prozess 4711 auf bench2, Benutzer lab, seit 2026-03-02T09:14:05Z"),
                Language.speaking(Locale.GERMAN, () -> List.of(owner.inWords(), owner.inFull())));
        assertEquals(owner.text(), owner.inFull());
    }
}
