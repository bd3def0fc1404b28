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
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
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
    private static final String[] TOOLS = {
        "cksum", "dirname", "find", "head", "locale", "mkdir", "mktemp", "mv", "readlink", "rm", "sed", "tr", "uname"
    };

    @TempDir
    private Path folder;

    private FakeMachine machine;
    private Path installation;
    private Path script;

    @BeforeEach
    void install() throws IOException {
        folder = folder.toRealPath();
        machine = new FakeMachine(folder, TOOLS);
        installation = folder.resolve("an installation");
        script = machine.install(installation);
    }

    @Test
    void opensTheWorkbenchWithoutAWord() throws Exception {
        FakeMachine.Outcome outcome = run();
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
        FakeMachine.Outcome outcome = run(word);
        assertEquals(0, outcome.exitCode(), outcome.message());
        assertEquals(WORKBENCH, outcome.after("-application"));
        assertEquals("@noDefault", outcome.after("-data"));
        assertEquals(List.of("=" + word), outcome.words());
    }

    @ParameterizedTest
    @ValueSource(strings = {"demo", "x.ohmstead.zip", "ohmstead", "--opens-workbench", "", "project.json5", "--help"})
    void opensNoWorkbenchForAnotherWord(String word) throws Exception {
        assertEquals(1, run("--opens-workbench", word).exitCode(), word);
        assertEquals(1, run("--opens-workbench", "x.ohmstead", word).exitCode(), "x.ohmstead " + word);
    }

    @Test
    void answersWhetherTheWorkbenchWouldOpenWithoutJavaAndWithoutADisplay() throws Exception {
        machine.environment.remove("JAVA_HOME");
        machine.environment.remove("DISPLAY");
        for (List<String> words : List.of(List.<String>of(), List.of("x.ohmstead"), List.of("a b/project.json"))) {
            List<String> asked = new ArrayList<>(words);
            asked.add(0, "--opens-workbench");
            FakeMachine.Outcome outcome = run(asked.toArray(String[]::new));
            assertEquals(0, outcome.exitCode(), words + ": " + outcome.message());
            assertEquals("", outcome.message());
            assertEquals(List.of(), outcome.arguments(), "Java was started");
        }
    }

    @Test
    void onAMacTheWorkbenchGetsTheFirstThreadAndNeedsNoDisplay() throws Exception {
        machine.environment.remove("DISPLAY");
        machine.isA("Darwin", "arm64");
        FakeMachine.Outcome outcome = run("x.ohmstead");
        assertEquals(WORKBENCH, outcome.after("-application"));
        assertEquals("-XstartOnFirstThread", outcome.arguments().get(0));
        assertFalse(run("demo").arguments().contains("-XstartOnFirstThread"), "a word needs no first thread");
    }

    @Test
    void leavesTheFolderOfTheStateToTheWorkbench() throws Exception {
        Path state = folder.resolve("some where/state");
        machine.environment.put("OHMSTEAD_STATE", state.toString());
        FakeMachine.Outcome outcome = run();
        assertTrue(outcome.saw("OHMSTEAD_STATE=" + state), outcome.message());
        assertEquals("@noDefault", outcome.after("-data"));
    }

    @Test
    void theFirstWorkbenchLeavesItsClassesForTheNext() throws Exception {
        machine.environment.put("XDG_DATA_HOME", folder.resolve("the data").toString());
        Path first = archive("-XX:ArchiveClassesAtExit=");
        assertEquals(folder.resolve("the data/ohmstead/classes"), first.getParent());
        assertEquals(List.of(), kept(), "nothing was written yet");
        // What java writes when it ends.
        Files.writeString(first, "classes");
        Path archive = archive("-XX:SharedArchiveFile=");
        assertEquals("classes", Files.readString(archive));
        assertEquals(List.of(archive), kept());
        assertEquals(archive, archive("-XX:SharedArchiveFile="));
        assertTrue(run("demo").arguments().stream().noneMatch(word -> word.contains("Archive")), "a word needs none");
    }

    @Test
    void anotherJavaGetsAnArchiveOfItsOwnAndTheOldOneGoes() throws Exception {
        machine.environment.put("OHMSTEAD_STATE", folder.resolve("state").toString());
        Files.writeString(archive("-XX:ArchiveClassesAtExit="), "classes");
        Path old = archive("-XX:SharedArchiveFile=");
        machine.environment.put(
                "JAVA_HOME", machine.javaHome("java-21", "21.0.4").toString());
        Path other = archive("-XX:ArchiveClassesAtExit=");
        assertFalse(other.toString().startsWith(old.toString()), other + " is another's name");
        assertEquals(List.of(), kept());
    }

    @Test
    void anArchiveThatJavaCouldNotFinishIsMadeAgain() throws Exception {
        machine.environment.put("OHMSTEAD_STATE", folder.resolve("state").toString());
        // Java writes the beginning last: until then there are zeros.
        Files.write(archive("-XX:ArchiveClassesAtExit="), new byte[4096]);
        archive("-XX:ArchiveClassesAtExit=");
        assertEquals(List.of(), kept());
    }

    @Test
    void anArchiveOfAnOlderInstallationIsMadeAgain() throws Exception {
        machine.environment.put("OHMSTEAD_STATE", folder.resolve("state").toString());
        Path first = archive("-XX:ArchiveClassesAtExit=");
        Files.writeString(first, "classes");
        Files.setLastModifiedTime(first, FileTime.from(Instant.parse("2020-01-01T00:00:00Z")));
        archive("-XX:ArchiveClassesAtExit=");
        assertEquals(List.of(), kept());
    }

    /** Starts the workbench and returns the archive that it is given by an option, the only one with this word. */
    private Path archive(String option) throws Exception {
        List<String> given = run().arguments().stream()
                .filter(word -> word.contains("Archive"))
                .toList();
        assertEquals(1, given.size(), given.toString());
        assertTrue(given.get(0).startsWith(option), given.toString());
        return Path.of(given.get(0).substring(option.length()));
    }

    private List<Path> kept() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.getFileName().toString().contains(".jsa"))
                    .toList();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"unix/ohmstead", "macos/MacOS/ohmstead"})
    void theScriptsArePlainShell(String name) throws Exception {
        Process check = new ProcessBuilder(
                        "sh", "-n", FakeMachine.START.resolve(name).toString())
                .redirectErrorStream(true)
                .start();
        String output = new String(check.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, check.waitFor(), output);
    }

    @Test
    void saysWhatIsMissingWithoutADisplay() throws Exception {
        machine.environment.remove("DISPLAY");
        FakeMachine.Outcome outcome = run();
        assertEquals(4, outcome.exitCode());
        assertEquals(List.of(), outcome.arguments(), "Java was started all the same");
        assertTrue(outcome.message().contains("no display"), outcome.message());
        assertTrue(outcome.message().contains("ohmstead --help"), outcome.message());
    }

    @Test
    void opensTheWorkbenchOnWaylandToo() throws Exception {
        machine.environment.remove("DISPLAY");
        machine.environment.put("WAYLAND_DISPLAY", "wayland-0");
        assertEquals(WORKBENCH, run().after("-application"));
    }

    @Test
    void givesEveryOtherWordToTheCommandLine() throws Exception {
        machine.environment.remove("DISPLAY");
        FakeMachine.Outcome outcome = run("demo", "--json");
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
        FakeMachine.Outcome outcome = run(words.toArray(String[]::new));
        assertEquals(COMMAND_LINE, outcome.after("-application"));
        assertEquals(words.stream().map(word -> "=" + word).toList(), outcome.words());
    }

    @Test
    void findsItsInstallationThroughLinks() throws Exception {
        Path elsewhere = Files.createDirectory(folder.resolve("bin"));
        Path first = Files.createSymbolicLink(elsewhere.resolve("ohmstead-0.1"), script);
        script = Files.createSymbolicLink(elsewhere.resolve("ohmstead"), first.getFileName());
        FakeMachine.Outcome outcome = run("demo");
        assertEquals(0, outcome.exitCode(), outcome.message());
        assertEquals(
                installation
                        .resolve("plugins/org.eclipse.equinox.launcher_1.0.0.jar")
                        .toString(),
                outcome.after("-jar"));
    }

    @Test
    void putsTheUsersJavaOptionsBeforeTheProgram() throws Exception {
        machine.environment.put("OHMSTEAD_JAVA_OPTIONS", "-Xmx2g -Dohmstead.nosplash=true");
        List<String> arguments = run().arguments();
        int program = arguments.indexOf("-jar");
        assertTrue(
                arguments.subList(0, program).containsAll(List.of("-Xmx2g", "-Dohmstead.nosplash=true")),
                arguments::toString);
    }

    @Test
    void endsAsJavaEnds() throws Exception {
        machine.environment.put("FAKE_EXIT", "3");
        assertEquals(3, run("demo").exitCode());
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.8.0_402", "11.0.22", "16.0.2"})
    void refusesAnOldJava(String version) throws Exception {
        machine.environment.put(
                "JAVA_HOME", machine.javaHome("java-old", version).toString());
        FakeMachine.Outcome outcome = run("demo");
        assertEquals(4, outcome.exitCode());
        assertEquals(List.of(), outcome.arguments(), "the old Java was started");
        assertTrue(outcome.message().contains("no Java 17 or newer"), outcome.message());
    }

    @Test
    void refusesToStartWithoutJava() throws Exception {
        machine.environment.remove("JAVA_HOME");
        FakeMachine.Outcome outcome = run("demo");
        assertEquals(4, outcome.exitCode());
        assertTrue(outcome.message().contains("no Java 17 or newer"), outcome.message());
    }

    @Test
    void passesOverAnOldJavaForANewerOneOnThePath() throws Exception {
        machine.environment.put(
                "JAVA_HOME", machine.javaHome("java-old", "11.0.22").toString());
        Path newer = machine.javaHome("java-25", "25");
        machine.environment.put("PATH", newer.resolve("bin") + ":" + machine.tools());
        assertEquals(COMMAND_LINE, run("demo").after("-application"));
    }

    @Test
    void runsFromAFolderThatItMayNotWriteToAndLeavesNothingBehind() throws Exception {
        // A folder that is not there is one that nobody may write to, root neither.
        Files.delete(installation.resolve("configuration"));
        Path temporary = Files.createDirectory(folder.resolve("temporary"));
        machine.environment.put("TMPDIR", temporary.toString());
        machine.environment.put("FAKE_EXIT", "3");
        FakeMachine.Outcome outcome = run("demo");
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
    void windowsStartsTheSameApplications() throws IOException {
        String batch = Files.readString(FakeMachine.START.resolve("windows/ohmstead.bat"));
        assertTrue(batch.contains("-application " + WORKBENCH + " -data @noDefault "), batch);
        assertTrue(batch.contains("-application " + COMMAND_LINE + " -data @none "), batch);
        assertTrue(batch.contains("-Dohmstead.words=marked"), batch);
        assertTrue(batch.contains("set words=%words% \"=%word%\""), "the words are not marked");
        assertTrue(batch.contains("if \"%~1\"==\"\" set \"workbench=yes\""), "no word opens no workbench");
        assertEquals(projectsOnUnix(), projectsOnWindows(batch), "both must know a project by the same names");
    }

    @Test
    void windowsDoublesTheBackslashesThatAWordEndsWith() throws IOException {
        List<String> batch = Files.readAllLines(FakeMachine.START.resolve("windows/ohmstead.bat"));
        assertEquals(
                List.of(
                        "if not \"%rest:~-1%\"==\"\\\" goto add",
                        "set \"word=%word%\\\"", "set \"rest=%rest:~0,-1%\"", "if defined rest goto slash", ":add"),
                batch.subList(batch.indexOf(":slash"), batch.indexOf(":add") + 1).stream()
                        .filter(line -> !line.equals(":slash") && !line.startsWith("rem "))
                        .toList());
    }

    /** Returns how the names of projects end for which the script of the other systems opens the workbench. */
    private static Set<String> projectsOnUnix() throws IOException {
        Matcher patterns = Pattern.compile("case \\$1 in ([^)]+)\\) return 0")
                .matcher(Files.readString(FakeMachine.START.resolve("unix/ohmstead")));
        assertTrue(patterns.find(), "the script knows no projects");
        return Stream.of(patterns.group(1).split("\\|"))
                .map(pattern -> pattern.strip().replaceAll("^\\*/?", ""))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Returns the same for Windows, where a path may be written with either slash. */
    private static Set<String> projectsOnWindows(String batch) {
        Set<String> projects = new TreeSet<>();
        Matcher names = Pattern.compile("if /i \"%~n?x1\"==\"([^\"]+)\" set \"workbench=yes\"")
                .matcher(batch);
        while (names.find()) {
            projects.add(names.group(1));
        }
        Set<String> ends = new TreeSet<>();
        Matcher slashes = Pattern.compile("if /i \"%first:~-(\\d+)%\"==\"([^\"]+)\" set \"workbench=yes\"")
                .matcher(batch);
        while (slashes.find()) {
            String end = slashes.group(2);
            assertEquals(end.length(), Integer.parseInt(slashes.group(1)), "too few or too many letters for " + end);
            ends.add(end);
        }
        assertEquals(Set.of(".ohmstead/", ".ohmstead\\"), ends);
        projects.add(".ohmstead/");
        return projects;
    }

    private FakeMachine.Outcome run(String... words) throws IOException, InterruptedException {
        return machine.run(script, words);
    }
}
