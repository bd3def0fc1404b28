// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.units.text.Language;

/** What jobs tell people, they tell in English and German. */
class JobsTextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{(\\d+)");

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = LogTrust.class.getResourceAsStream(name);
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

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            String said = english.getProperty(key);
            String translated = german.getProperty(key);
            assertFalse(translated.isBlank(), key);
            assertEquals(places(said), places(translated), key);
            assertDoesNotThrow(() -> new MessageFormat(said), key);
            assertDoesNotThrow(() -> new MessageFormat(translated), key);
        }
    }

    @Test
    void aProjectWithoutALogIsRefusedInGerman() throws Exception {
        ProjectFolder project = ProjectFolder.open(Path.of("../../demo-data/larkspur.ohmstead"));
        JobException refusal =
                Language.speaking(Locale.GERMAN, () -> assertThrows(JobException.class, project::readLog));
        assertEquals(JobException.Reason.NO_LOG, refusal.reason());
        assertEquals(
                "Das Projekt " + project.folder() + " hat noch kein Protokoll. Zuerst Ablesungen protokollieren.",
                refusal.getMessage());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "OFF|0|0|The project names no shared log.|Das Projekt nennt kein gemeinsames Protokoll.",
                "IN_STEP|0|0|The shared log lab:5432/log has all entries of this log."
                        + "|Das gemeinsame Protokoll lab:5432/log hat alle Eintr\u00e4ge dieses Protokolls.",
                "IN_STEP|0|1|The shared log lab:5432/log has all entries of this log; 1 entry was handed over.|Das"
                        + " gemeinsame Protokoll lab:5432/log hat alle Eintr\u00e4ge dieses Protokolls; 1 Eintrag wurde"
                        + " \u00fcbergeben.",
                "IN_STEP|0|1200|The shared log lab:5432/log has all entries of this log; 1200 entries were handed"
                        + " over.|Das gemeinsame Protokoll lab:5432/log hat alle Eintr\u00e4ge dieses Protokolls; 1200"
                        + " Eintr\u00e4ge wurden \u00fcbergeben.",
                "HANDING_OVER|0|0|It is being seen to that the shared log lab:5432/log has all entries of this log.|Es"
                        + " wird daf\u00fcr gesorgt, dass das gemeinsame Protokoll lab:5432/log alle Eintr\u00e4ge dieses"
                        + " Protokolls hat.",
                "HANDING_OVER|1|0|1 entry is being handed over to the shared log lab:5432/log."
                        + "|1 Eintrag wird an das gemeinsame Protokoll lab:5432/log \u00fcbergeben.",
                "WAITING|2|0|2 entries wait here for the shared log lab:5432/log. No answer."
                        + "|2 Eintr\u00e4ge warten hier auf das gemeinsame Protokoll lab:5432/log. No answer.",
                "STOPPED|0|0|It is not known whether the shared log lab:5432/log has all entries of this log. No"
                        + " answer.|Es ist nicht bekannt, ob das gemeinsame Protokoll lab:5432/log alle Eintr\u00e4ge"
                        + " dieses Protokolls hat. No answer."
            })
    void theStateOfTheSharedLogIsSaidInBothLanguages(
            SharingState.Kind kind, long waiting, long handedOver, String english, String german) {
        SharingState state = new SharingState(
                kind, "lab:5432/log", waiting, handedOver, Optional.empty(), "No answer.", Optional.empty());
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "en");
            assertEquals(english, state.sentence());
            System.setProperty(Language.PROPERTY, "de");
            assertEquals(german, state.sentence());
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }
}
