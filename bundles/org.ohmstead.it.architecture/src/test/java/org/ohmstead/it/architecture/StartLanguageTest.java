// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** In which language the start scripts have Java and the framework start, and how a workbench is started anew after a change of it. */
@EnabledOnOs(OS.LINUX)
class StartLanguageTest {
    private static final String[] TOOLS = {
        "cksum",
        "dirname",
        "find",
        "head",
        "locale",
        "mkdir",
        "mktemp",
        "mv",
        "readlink",
        "rm",
        "sed",
        "sleep",
        "tr",
        "uname"
    };
    private static final String PROPERTY = "-Dohmstead.language=";

    @TempDir
    private Path folder;

    private FakeMachine machine;
    private Path state;
    private Path script;

    @BeforeEach
    void install() throws IOException {
        folder = folder.toRealPath();
        machine = new FakeMachine(folder, TOOLS);
        script = machine.install(folder.resolve("an installation"));
        state = Files.createDirectory(folder.resolve("the state"));
        machine.environment.put("OHMSTEAD_STATE", state.toString());
    }

    private void choose(String written) throws IOException {
        Files.writeString(state.resolve("language"), written);
    }

    private static List<String> languages(FakeMachine.Outcome outcome) {
        return outcome.arguments().stream()
                .filter(word -> word.startsWith(PROPERTY))
                .map(word -> word.substring(PROPERTY.length()))
                .toList();
    }

    private void assertSpeaks(String language, String locale, String... words) throws Exception {
        FakeMachine.Outcome outcome = machine.run(script, words);
        assertEquals(0, outcome.exitCode(), outcome.message());
        List<String> languages = languages(outcome);
        assertEquals(language, languages.get(languages.size() - 1), outcome.arguments()::toString);
        assertEquals(locale, outcome.after("-nl"));
        int program = outcome.arguments().indexOf("-jar");
        assertTrue(outcome.arguments().indexOf("-nl") > program, "-nl is for the framework, not for Java");
        assertTrue(outcome.arguments().indexOf(PROPERTY + language) < program, "the property is for Java");
    }

    private void assertSpeaksAsTheMachine(String... words) throws Exception {
        FakeMachine.Outcome outcome = machine.run(script, words);
        assertEquals(0, outcome.exitCode(), outcome.message());
        assertEquals(List.of(), languages(outcome));
        assertFalse(outcome.arguments().contains("-nl"), outcome.arguments()::toString);
    }

    @Test
    void withoutAChoiceTheMachinesLanguageIsSpoken() throws Exception {
        assertSpeaksAsTheMachine();
        assertSpeaksAsTheMachine("demo");
        machine.environment.remove("OHMSTEAD_STATE");
        assertSpeaksAsTheMachine("demo");
    }

    @ParameterizedTest
    @ValueSource(strings = {"de", "en"})
    void theUsersChoiceIsSpokenByWorkbenchAndWords(String chosen) throws Exception {
        choose(chosen + "\n");
        assertSpeaks(chosen, chosen);
        assertSpeaks(chosen, chosen, "demo", "--json");
        choose(chosen); // written by hand, without an end of the line
        assertSpeaks(chosen, chosen, "demo");
    }

    @Test
    void theChoiceLiesWhereTheUsersDataAre() throws Exception {
        machine.environment.remove("OHMSTEAD_STATE");
        machine.environment.put("XDG_DATA_HOME", folder.resolve("data").toString());
        state = Files.createDirectories(folder.resolve("data/ohmstead"));
        choose("de\n");
        assertSpeaks("de", "de");
        machine.environment.remove("XDG_DATA_HOME");
        machine.environment.put("HOME", folder.resolve("home").toString());
        assertSpeaksAsTheMachine("demo");
        state = Files.createDirectories(folder.resolve("home/.local/share/ohmstead"));
        choose("en\n");
        assertSpeaks("en", "en");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "fr\n", "de; exit 3\n", "$(exit 3)\n", "-XX:Bad\n"})
    void aChoiceThatIsNoneIsPassedOver(String written) throws Exception {
        choose(written);
        assertSpeaksAsTheMachine();
        assertSpeaksAsTheMachine("demo");
    }

    @ParameterizedTest
    @CsvSource({"de,de", "de-AT,de", "DE_ch,de", "en,en", "en-GB,en", "fr,en", "del,en", "deutsch,en"})
    void javasOptionsGoBeforeTheChoice(String asked, String locale) throws Exception {
        choose("de".equals(locale) ? "en\n" : "de\n");
        machine.environment.put("OHMSTEAD_JAVA_OPTIONS", "-Xmx2g -Dohmstead.language=" + asked + " -Dohmstead.other=x");
        assertSpeaks(asked, locale);
        assertSpeaks(asked, locale, "demo");
        machine.environment.put("OHMSTEAD_JAVA_OPTIONS", "-Dohmstead.language=it -Dohmstead.language=" + asked);
        assertSpeaks(asked, locale);
    }

    @Test
    void aWorkbenchThatIsStartedAnewWaitsUntilTheOldOneHasEnded() throws Exception {
        choose("de\n");
        Process old = new ProcessBuilder("sleep", "1").start();
        long began = System.nanoTime();
        FakeMachine.Outcome outcome = machine.run(script, "--after", Long.toString(old.pid()), "x y.ohmstead");
        assertTrue(old.waitFor(0, TimeUnit.SECONDS), "it did not wait");
        assertTrue(System.nanoTime() - began > TimeUnit.MILLISECONDS.toNanos(500), "it did not wait");
        assertEquals("org.ohmstead.app.workbench", outcome.after("-application"));
        assertEquals("de", outcome.after("-nl"));
        assertEquals(List.of("=x y.ohmstead"), outcome.words());
        assertEquals(
                List.of(),
                machine.run(script, "--after", Long.toString(old.pid())).words());
    }

    @Test
    void javaLearnsWhereTheScriptIs() throws Exception {
        assertTrue(machine.run(script).arguments().contains("-Dohmstead.start=" + script));
        Path link = Files.createSymbolicLink(folder.resolve("link"), script);
        assertTrue(machine.run(link).arguments().contains("-Dohmstead.start=" + script), "the link may go");
    }

    @Test
    void windowsAsksTheSame() throws IOException {
        String batch = Files.readString(FakeMachine.START.resolve("windows/ohmstead.bat"));
        assertTrue(batch.contains("if \"%~1\"==\"-Dohmstead.language\" set \"language=%~2\""), batch);
        assertTrue(batch.contains("if not defined language if exist \"%state%\\language\" call :chosen"), batch);
        assertTrue(batch.contains("set \"state=%LOCALAPPDATA%\\Ohmstead\""), batch);
        assertEquals(3, batch.split("%locale%", -1).length, "both applications get the locale");
        int workbench = batch.indexOf("-application org.ohmstead.app.workbench");
        int again = batch.indexOf("if %errorlevel% equ 23 goto start");
        assertTrue(workbench > 0 && again > workbench, "a workbench that asks for it is started again");
    }
}
