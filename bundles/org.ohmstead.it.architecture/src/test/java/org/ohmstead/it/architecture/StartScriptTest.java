// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the start scripts make of their words. They run from an installation that has nothing in it but what they seek,
 * with a java that prints the arguments it is given, one a line.
 */
@EnabledOnOs(OS.LINUX)
class StartScriptTest {
    private static final String WORKBENCH = "org.ohmstead.app.workbench";
    private static final String COMMAND_LINE = "org.ohmstead.cli.application";
    /** The programs of the system that the script calls; java is not among them. */
    private static final List<String> TOOLS =
            List.of("dirname", "find", "head", "locale", "mktemp", "readlink", "rm", "sed", "uname");

    @TempDir
    private Path folder;

    private Path installation;
    private Path tools;
    private Path script;
    private final Map<String, String> environment = new HashMap<>();

    private record Outcome(int exitCode, List<String> arguments, String message) {
        String after(String option) {
            int place = arguments.indexOf(option);
            assertTrue(place >= 0, option + " is not among " + arguments);
            return arguments.get(place + 1);
        }

        /** Returns what follows the options of the framework: the words, marked. */
        List<String> words() {
            return arguments.subList(arguments.indexOf("-data") + 2, arguments.size());
        }
    }

    @BeforeEach
    void install() throws IOException {
        folder = folder.toRealPath();
        installation = folder.resolve("an installation");
        Files.createDirectories(installation.resolve("plugins"));
        Files.createDirectories(installation.resolve("configuration"));
        Files.createFile(installation.resolve("plugins/org.eclipse.equinox.launcher_1.0.0.jar"));
        script = installScript("unix/ohmstead");
        tools = Files.createDirectory(folder.resolve("tools"));
        for (String tool : TOOLS) {
            Path program = Stream.of("/usr/bin", "/bin")
                    .map(directory -> Path.of(directory, tool))
                    .filter(Files::isExecutable)
                    .findFirst()
                    .orElseThrow(() -> new AssertionError(tool + " is not installed"));
            executable(tools.resolve(tool), "#!/bin/sh\nexec " + program + " \"$@\"\n");
        }
        environment.put("PATH", tools.toString());
        environment.put("JAVA_HOME", javaHome("java-17", "17.0.15").toString());
        environment.put("DISPLAY", ":9");
    }

    @Test
    void opensTheWorkbenchWithoutAWord() throws Exception {
        Outcome outcome = run();
        assertEquals(0, outcome.exitCode(), outcome.message());
        assertEquals(WORKBENCH, outcome.after("-application"));
        assertEquals("@noDefault", outcome.after("-data"));
        assertEquals(List.of(), outcome.words());
        assertEquals(
                installation
                        .resolve("plugins/org.eclipse.equinox.launcher_1.0.0.jar")
                        .toString(),
                outcome.after("-jar"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "x.ohmstead",
                "x.ohmstead/",
                "shop floor/Amp 4.ohmstead",
                "project.json",
                "/home/bench/x/project.json",
                "-x.ohmstead"
            })
    void opensTheWorkbenchWithAProject(String word) throws Exception {
        Outcome outcome = run(word);
        assertEquals(0, outcome.exitCode(), outcome.message());
        assertEquals(WORKBENCH, outcome.after("-application"));
        assertEquals("@noDefault", outcome.after("-data"));
        assertEquals(List.of("=" + word), outcome.words());
    }

    @Test
    void saysWhatIsMissingWithoutADisplay() throws Exception {
        environment.remove("DISPLAY");
        Outcome outcome = run();
        assertEquals(4, outcome.exitCode());
        assertEquals(List.of(), outcome.arguments(), "Java was started all the same");
        assertTrue(outcome.message().contains("no display"), outcome.message());
        assertTrue(outcome.message().contains("ohmstead --help"), outcome.message());
    }

    @Test
    void opensTheWorkbenchOnWaylandToo() throws Exception {
        environment.remove("DISPLAY");
        environment.put("WAYLAND_DISPLAY", "wayland-0");
        assertEquals(WORKBENCH, run().after("-application"));
    }

    @Test
    void givesEveryOtherWordToTheCommandLine() throws Exception {
        environment.remove("DISPLAY");
        Outcome outcome = run("demo", "--json");
        assertEquals(0, outcome.exitCode(), outcome.message());
        assertEquals(COMMAND_LINE, outcome.after("-application"));
        assertEquals("@none", outcome.after("-data"));
        assertEquals(List.of("=demo", "=--json"), outcome.words());
        assertTrue(
                outcome.arguments().contains("-Dohmstead.words=marked"),
                outcome.arguments().toString());
    }

    @Test
    void keepsSpacesQuotesAndEmptyWords() throws Exception {
        List<String> words = List.of(
                "run",
                "Amp 4.ohmstead",
                "it's",
                "say \"so\"",
                "$HOME",
                "*",
                "",
                "back\\slash",
                "-data",
                "-vmargs",
                "a;b&c");
        Outcome outcome = run(words.toArray(String[]::new));
        assertEquals(COMMAND_LINE, outcome.after("-application"));
        assertEquals(words.stream().map(word -> "=" + word).toList(), outcome.words());
    }

    @Test
    void findsItsInstallationThroughLinks() throws Exception {
        Path elsewhere = Files.createDirectory(folder.resolve("bin"));
        Path first = Files.createSymbolicLink(elsewhere.resolve("ohmstead-0.1"), script);
        script = Files.createSymbolicLink(elsewhere.resolve("ohmstead"), first.getFileName());
        Outcome outcome = run("demo");
        assertEquals(0, outcome.exitCode(), outcome.message());
        assertEquals(
                installation
                        .resolve("plugins/org.eclipse.equinox.launcher_1.0.0.jar")
                        .toString(),
                outcome.after("-jar"));
    }

    @Test
    void putsTheUsersJavaOptionsBeforeTheProgram() throws Exception {
        environment.put("OHMSTEAD_JAVA_OPTIONS", "-Xmx2g -Dohmstead.nosplash=true");
        List<String> arguments = run().arguments();
        int program = arguments.indexOf("-jar");
        assertTrue(
                arguments.subList(0, program).containsAll(List.of("-Xmx2g", "-Dohmstead.nosplash=true")),
                arguments::toString);
    }

    @Test
    void endsAsJavaEnds() throws Exception {
        environment.put("FAKE_EXIT", "3");
        assertEquals(3, run("demo").exitCode());
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.8.0_402", "11.0.22", "16.0.2"})
    void refusesAnOldJava(String version) throws Exception {
        environment.put("JAVA_HOME", javaHome("java-old", version).toString());
        Outcome outcome = run("demo");
        assertEquals(4, outcome.exitCode());
        assertEquals(List.of(), outcome.arguments(), "the old Java was started");
        assertTrue(outcome.message().contains("no Java 17 or newer"), outcome.message());
    }

    @Test
    void refusesToStartWithoutJava() throws Exception {
        environment.remove("JAVA_HOME");
        Outcome outcome = run("demo");
        assertEquals(4, outcome.exitCode());
        assertTrue(outcome.message().contains("no Java 17 or newer"), outcome.message());
    }

    @Test
    void passesOverAnOldJavaForANewerOneOnThePath() throws Exception {
        environment.put("JAVA_HOME", javaHome("java-old", "11.0.22").toString());
        Path newer = javaHome("java-25", "25");
        environment.put("PATH", newer.resolve("bin") + ":" + tools);
        assertEquals(COMMAND_LINE, run("demo").after("-application"));
    }

    @Test
    void runsFromAFolderThatItMayNotWriteToAndLeavesNothingBehind() throws Exception {
        // A folder that is not there is one that nobody may write to, root neither.
        Files.delete(installation.resolve("configuration"));
        Path temporary = Files.createDirectory(folder.resolve("temporary"));
        environment.put("TMPDIR", temporary.toString());
        environment.put("FAKE_EXIT", "3");
        Outcome outcome = run("demo");
        assertEquals(3, outcome.exitCode(), outcome.message());
        String shared = "-Dosgi.sharedConfiguration.area=file:" + installation.resolve("configuration") + "/";
        assertTrue(outcome.arguments().contains(shared), outcome.arguments().toString());
        assertTrue(outcome.arguments().stream()
                .anyMatch(word -> word.startsWith("-Dosgi.configuration.area=file:" + temporary + "/")));
        assertEquals(List.of("=demo"), outcome.words());
        try (Stream<Path> left = Files.list(temporary)) {
            assertEquals(List.of(), left.toList());
        }
    }

    @Test
    void opensTheWorkbenchFromTheFinder() throws Exception {
        script = installScript("macos/ohmstead.command");
        assertEquals(WORKBENCH, run().after("-application"));
        assertEquals(List.of("=x.ohmstead"), run("x.ohmstead").words());
    }

    @Test
    void windowsStartsTheSameApplications() throws IOException {
        String batch = Files.readString(start("windows/ohmstead.bat"));
        assertTrue(batch.contains("-application " + WORKBENCH + " -data @noDefault "), batch);
        assertTrue(batch.contains("-application " + COMMAND_LINE + " -data @none "), batch);
        assertTrue(batch.contains("-Dohmstead.words=marked"), batch);
        assertTrue(batch.contains("\"=%~1\""), "the words are not marked");
        for (String ending : List.of(".ohmstead", "project.json")) {
            assertTrue(batch.contains("==\"" + ending + "\""), "a project is not known by " + ending);
        }
    }

    private static Path start(String name) {
        return Bundles.root().resolve("features/org.ohmstead.feature/start").resolve(name);
    }

    /** Copies a start script into the installation, with the machine's own Javas put out of its sight. */
    private Path installScript(String name) throws IOException {
        Path nowhere = folder.resolve("nowhere");
        String text = Files.readString(start(name))
                .replace("/usr/lib/jvm/", nowhere + "/")
                .replace("/Library/Java/JavaVirtualMachines/", nowhere + "/");
        return executable(installation.resolve(Path.of(name).getFileName()), text);
    }

    private Path javaHome(String name, String version) throws IOException {
        Path home = folder.resolve(name);
        Files.createDirectories(home.resolve("bin"));
        executable(
                home.resolve("bin/java"),
                """
                #!/bin/sh
                if [ "$1" = -version ]; then
                    echo 'openjdk version "%s" 2025-04-15' >&2
                    exit 0
                fi
                for argument in "$@"; do printf '%%s\\n' "$argument"; done
                exit "${FAKE_EXIT:-0}"
                """
                        .formatted(version));
        return home;
    }

    private static Path executable(Path file, String text) throws IOException {
        Files.writeString(file, text);
        assertTrue(file.toFile().setExecutable(true), "cannot be made executable: " + file);
        return file;
    }

    private Outcome run(String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(words));
        command.add(0, script.toString());
        Path output = folder.resolve("output");
        Path message = folder.resolve("message");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(output.toFile())
                .redirectError(message.toFile());
        builder.environment().clear();
        builder.environment().putAll(environment);
        Process process = builder.start();
        assertTrue(process.waitFor(1, TimeUnit.MINUTES), "still running: " + command);
        List<String> arguments = Files.readAllLines(output, StandardCharsets.UTF_8);
        assertFalse(arguments.contains("-version"), "asked for its version, Java was started");
        return new Outcome(process.exitValue(), arguments, Files.readString(message));
    }
}
