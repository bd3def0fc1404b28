// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.SharedLog;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;

/** What the shared log, its server and the way to it refuse is said in English and German. */
class SharedTextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{(\\d+)");

    @TempDir
    private Path folder;

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = SharedTextsTest.class.getResourceAsStream(name);
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
    @ValueSource(strings = {"/org/ohmstead/testlog/shared/", "/org/ohmstead/testlog/shared/internal/"})
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

    @Test
    void whatTheProjectLacksIsSaidInGerman() throws Exception {
        Language.speaking(Locale.GERMAN, () -> {
            assertEquals(
                    "Das Projekt sagt nicht, wie dieser Messplatz f\u00fcr das gemeinsame Protokoll hei\u00dft."
                            + " sharedLog in project.json erg\u00e4nzen, oder in Ohmstead selbst auf der Seite des"
                            + " Messplatzes.",
                    assertThrows(
                                    SharedLabException.class,
                                    () -> LabAddress.of(new SharedLog("h", 5432, "ohm", "", ""), folder))
                            .getMessage());
            LabAddress address = new LabAddress("h", 5432, "ohm", Optional.empty());
            assertEquals(
                    "OHMSTEAD_LOG_PASSWORD ist gesetzt, OHMSTEAD_LOG_USER aber nicht; wessen Passwort es ist, ist also"
                            + " nicht bekannt. Beide setzen.",
                    assertThrows(
                                    SharedLabException.class,
                                    () -> LabCredentials.find(
                                            address, Map.of(LabCredentials.PASSWORD_VARIABLE, "x"), folder))
                            .getMessage());
            return null;
        });
    }

    @Test
    void aServerThatIsNotThereIsSaidInGerman() throws Exception {
        int free;
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            free = socket.getLocalPort();
        }
        LabAddress address = new LabAddress("127.0.0.1", free, "lab", Optional.empty());
        LabCredentials credentials = new LabCredentials("somebody", Optional.of("x"), "a test");
        Language.speaking(Locale.GERMAN, () -> {
            String sentences = assertThrows(SharedLabException.class, () -> SharedLab.connect(address, credentials))
                    .getMessage();
            assertTrue(
                    sentences.startsWith("Das gemeinsame Protokoll wurde nicht ge\u00f6ffnet: Der Server 127.0.0.1:"
                            + free + "/lab antwortet nicht, oder die Verbindung riss ab ("),
                    sentences);
            assertTrue(
                    sentences.endsWith(
                            "). Das Netz pr\u00fcfen und ob der Server l\u00e4uft; was im eigenen Protokoll des"
                                    + " Messplatzes steht, bleibt dort und wird sp\u00e4ter \u00fcbergeben."),
                    sentences);
            return null;
        });
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0|1234|0 entries were handed over, 1234 were there already.|0 Eintr\u00e4ge wurden \u00fcbergeben,"
                        + " 1234 waren schon da.|0 entries of the joined chain B (bench 2) were handed over, 1234 were"
                        + " there already.|0 Eintr\u00e4ge der \u00fcbernommenen Kette B (bench 2) wurden \u00fcbergeben,"
                        + " 1234 waren schon da.",
                "1|0|1 entry was handed over, 0 were there already."
                        + "|1 Eintrag wurde \u00fcbergeben, 0 waren schon da."
                        + "|1 entry of the joined chain B (bench 2) was handed over, 0 were there already."
                        + "|1 Eintrag der \u00fcbernommenen Kette B (bench 2) wurde \u00fcbergeben, 0 waren schon da.",
                "2000|1|2000 entries were handed over, 1 was there already.|2000 Eintr\u00e4ge wurden \u00fcbergeben,"
                        + " 1 war schon da.|2000 entries of the joined chain B (bench 2) were handed over, 1 was there"
                        + " already.|2000 Eintr\u00e4ge der \u00fcbernommenen Kette B (bench 2) wurden \u00fcbergeben, 1"
                        + " war schon da."
            })
    void whatWasHandedOverIsCounted(
            long handedOver, long already, String english, String german, String joined, String joinedGerman) {
        for (Locale language : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            Messages texts = Messages.of(HandOver.class, language);
            boolean plain = language.equals(Locale.ENGLISH);
            assertEquals(plain ? english : german, texts.text("handed.own", handedOver, already, "", ""));
            assertEquals(
                    plain ? joined : joinedGerman, texts.text("handed.joined", handedOver, already, "B", "bench 2"));
        }
    }
}
