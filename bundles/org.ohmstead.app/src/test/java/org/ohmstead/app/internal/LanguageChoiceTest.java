// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.jobs.StateFolder;

class LanguageChoiceTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource
    void whatIsChosenIsReadAgainAndLeavesNothingElse(LanguageChoice choice) throws IOException {
        Path state = folder.resolve("not/there yet");
        LanguageChoice.GERMAN.write(state);
        choice.write(state);
        assertEquals(choice, LanguageChoice.read(state));
        try (Stream<Path> files = Files.list(state)) {
            assertEquals(choice == LanguageChoice.MACHINE ? 0 : 1, files.count());
        }
        choice.write(state);
        assertEquals(choice, LanguageChoice.read(state));
    }

    /** The start scripts read this file; StartLanguageTest of the architecture checks holds them to it. */
    @Test
    void theFileIsOneLineWithTheLanguage() throws IOException {
        LanguageChoice.GERMAN.write(folder);
        assertEquals("de\n", Files.readString(folder.resolve("language")));
        LanguageChoice.ENGLISH.write(folder);
        assertEquals("en\n", Files.readString(folder.resolve("language")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "fr\n", "deutsch", "de en"})
    void whatNamesNoLanguageOfOursMeansTheMachine(String written) throws IOException {
        Files.writeString(folder.resolve("language"), written);
        assertEquals(LanguageChoice.MACHINE, LanguageChoice.read(folder));
    }

    @Test
    void withoutAFileItIsTheMachine() throws IOException {
        assertEquals(LanguageChoice.MACHINE, LanguageChoice.read(folder.resolve("nowhere")));
        LanguageChoice.MACHINE.write(folder.resolve("nowhere"));
        assertFalse(Files.exists(folder.resolve("nowhere")), "nothing had to be written");
    }

    @Test
    void aFolderThatIsNoneIsToldOf() throws IOException {
        Path file = Files.createFile(folder.resolve("file"));
        assertThrows(IOException.class, () -> LanguageChoice.GERMAN.write(file));
    }

    @Test
    void theEnvironmentMayAskByItself() {
        assertFalse(LanguageChoice.isOverruled(Map.of()));
        assertFalse(LanguageChoice.isOverruled(Map.of("OHMSTEAD_JAVA_OPTIONS", "-Xmx2g -Dohmstead.nosplash=true")));
        assertTrue(LanguageChoice.isOverruled(Map.of("OHMSTEAD_JAVA_OPTIONS", "-Xmx2g -Dohmstead.language=de")));
    }

    @Test
    void theMachinesLanguageIsThatOfJavasStart() {
        assertEquals(Locale.GERMANY, machine("de", "DE"));
        assertEquals(Locale.ENGLISH, machine("fr", "CA"), "what is not spoken is said in English");
        assertEquals(Locale.ENGLISH, LanguageChoice.machine(new Properties()));
    }

    private static Locale machine(String language, String country) {
        Properties properties = new Properties();
        properties.setProperty("user.language", language);
        properties.setProperty("user.country", country);
        return LanguageChoice.machine(properties);
    }

    @Test
    void theStateLiesWhereTheStartScriptsLook() {
        Path home = Path.of("/home/bench");
        assertEquals(Path.of("/elsewhere"), StateFolder.of(Map.of("OHMSTEAD_STATE", "/elsewhere"), home));
        assertEquals(Path.of("/local/Ohmstead"), StateFolder.of(Map.of("LOCALAPPDATA", "/local"), home));
        assertEquals(Path.of("/data/ohmstead"), StateFolder.of(Map.of("XDG_DATA_HOME", "/data"), home));
        assertEquals(Path.of("/home/bench/.local/share/ohmstead"), StateFolder.of(Map.of(), home));
    }

    @Test
    void aRestartCallsTheScriptWithTheSameWords() {
        assertEquals(
                Optional.of(List.of("/an installation/ohmstead", "--after", "4711", "shop floor/x.ohmstead")),
                Restart.command("/an installation/ohmstead", 4711, "-foo", "=shop floor/x.ohmstead"));
        assertEquals(Optional.empty(), Restart.command(null, 4711, "=x.ohmstead"), "Windows' script does it itself");
        assertEquals(Optional.empty(), Restart.command(" ", 4711));
    }
}
