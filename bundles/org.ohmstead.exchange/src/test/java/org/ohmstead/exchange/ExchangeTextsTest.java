// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

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
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.text.Language;

/** What is wrong with a file is said in English and German; what goes into a log or a file reads the same everywhere. */
class ExchangeTextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{(\\d+)");
    private static final String HEADINGS =
            "taken_at_utc,mode,load_ohm,frequency_Hz,end_point,end_point_limit_percent,power_W,power_std_uncertainty_W,"
                    + "thd_f_percent,supply_V\n";
    private static final String GOOD = "2026-03-02T09:14:05Z,single,4,1000,thd_plus_noise_r,1,88.5,0.6,0.4,14.4\n";

    @TempDir
    private Path folder;

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = ExchangeTextsTest.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static Set<String> places(String text) {
        return PLACE.matcher(text)
                .results()
                .map((MatchResult found) -> found.group(1))
                .collect(Collectors.toSet());
    }

    @ParameterizedTest
    @ValueSource(strings = {"/org/ohmstead/exchange/", "/org/ohmstead/exchange/internal/"})
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces(String place) throws IOException {
        Properties english = texts(place + "messages.properties");
        Properties german = texts(place + "messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            assertEquals(places(english.getProperty(key)), places(german.getProperty(key)), key);
            assertFalse(german.getProperty(key).isBlank(), key);
        }
    }

    private ReadingImport table(String text) throws Exception {
        return ReadingImport.read(
                Files.writeString(folder.resolve("earlier.csv"), text), ImportSettings.of(Samples.REVISION, "0.1.0"));
    }

    @Test
    void whatIsWrongWithATableIsSaidInGerman() throws Exception {
        Language.speaking(Locale.GERMAN, () -> {
            ReadingImport table = table(HEADINGS + GOOD.replace("88.5", "viel").replace("single", "dreifach") + GOOD);
            assertEquals(
                    "Zeile 2, Spalte \u201emode\u201c: \u201edreifach\u201c ist keines von [stereo, bridged, single].",
                    table.faults().get(0).text());
            ReadingImport other = table(HEADINGS + GOOD.replace("88.5", "viel") + GOOD);
            try (TestLog log = TestLog.open(folder.resolve("log.db"))) {
                assertEquals(
                        "Aus earlier.csv wurde nichts importiert, denn eine Ablesung ist fehlerhaft: Zeile 2, Spalte"
                                + " \u201epower_W\u201c: \u201eviel\u201c ist keine Zahl mit Dezimalpunkt und ohne"
                                + " Tausendertrennzeichen. Das berichtigen oder fehlerhafte Zeilen absichtlich"
                                + " auslassen.",
                        assertThrows(ExchangeException.class, () -> other.addTo(log, false, ExchangeProgress.SILENT))
                                .getMessage());
            }
            return null;
        });
    }

    @Test
    void whatIsStoredReadsTheSameInGerman() throws Exception {
        Path here = folder.resolve("here.csv");
        Path there = folder.resolve("there.csv");
        ReadingImport english = table(HEADINGS + GOOD);
        ReadingImport german = Language.speaking(Locale.GERMAN, () -> table(HEADINGS + GOOD));
        assertEquals(english.readings(), german.readings());
        try (TestLog log = TestLog.open(folder.resolve("log.db"))) {
            english.addTo(log, false, ExchangeProgress.SILENT);
            EntrySource entries = EntrySource.of(Samples.entries(log));
            ReadingsCsv.write(entries, CsvDialect.SEMICOLON, here);
            Language.speaking(Locale.GERMAN, () -> {
                ReadingsCsv.write(entries, CsvDialect.SEMICOLON, there);
                return null;
            });
        }
        assertEquals(Files.readString(here), Files.readString(there));
    }
}
