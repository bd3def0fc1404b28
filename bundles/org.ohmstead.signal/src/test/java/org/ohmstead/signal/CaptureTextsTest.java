// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Said;

class CaptureTextsTest {
    @TempDir
    Path folder;

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = Texts.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "gain/", "sound/", "stimulus/"})
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces(String place) throws IOException {
        Properties english = texts(place + "messages.properties");
        Properties german = texts(place + "messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        english.forEach((key, text) -> {
            for (String argument : List.of("{0}", "{1}", "{2}", "{3}", "{4}", "{5}")) {
                assertEquals(
                        text.toString().contains(argument),
                        german.getProperty(key.toString()).contains(argument),
                        key + " " + argument);
            }
        });
    }

    @Test
    void numbersHaveTheDecimalMarkOfTheLanguageAndNamesStayAsTheyAre() {
        String english = in(Locale.ENGLISH, () -> Texts.say("csv.uneven", Path.of("a.1"), 1200, "0.5", "1e-05"));
        assertTrue(english.contains("a.1: the times") && english.contains("line 1200 the step is 0.5 s"), english);
        String german = in(Locale.GERMAN, () -> Texts.say("csv.uneven", Path.of("1.5"), 1200, "0.5", "1.5e-05"));
        assertTrue(german.startsWith("1.5: ") && german.contains("Zeile 1200 ist der Schritt 0,5 s"), german);
        assertTrue(german.contains("1,5e-05 s"), german);
    }

    private static String in(Locale language, Language.Work<String, RuntimeException> work) {
        return Language.speaking(language, work);
    }

    @Test
    void saysWhatIsWrongWithAFileInTheLanguageSpoken() throws Exception {
        Path file = Files.writeString(folder.resolve("table.csv"), "0,1\n1,2,3\n");
        CaptureException english = assertThrows(
                CaptureException.class,
                () -> Language.speaking(Locale.ENGLISH, () -> CaptureFile.read(file, new double[] {1})));
        assertEquals(
                "table.csv: line 2 has 3 columns, but the lines before have 2. Export the file again.",
                english.getMessage());
        CaptureException german = assertThrows(
                CaptureException.class,
                () -> Language.speaking(Locale.GERMAN, () -> CaptureFile.read(file, new double[] {1})));
        assertEquals(
                "table.csv: Zeile 2 hat 3 Spalten, die Zeilen davor haben 2. Die Datei neu exportieren.",
                german.getMessage());
        assertEquals(new Said(english.getMessage(), german.getMessage()), german.said(), "a log keeps the English one");
    }
}
