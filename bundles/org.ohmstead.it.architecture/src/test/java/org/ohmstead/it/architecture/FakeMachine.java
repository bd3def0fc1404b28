// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

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

/**
 * A machine for scripts to run on: no programs but those it is given, and a java that prints the arguments it gets, one a line, and on
 * the other stream what it sees of Ohmstead in its environment.
 */
final class FakeMachine {
    /** Where the start scripts of all systems are. */
    static final Path START = Bundles.root().resolve("features/org.ohmstead.feature/start");

    /** What the scripts find in their environment. */
    final Map<String, String> environment = new HashMap<>();

    private final Path folder;
    private final Path tools;

    /**
     * What became of a run.
     *
     * @param exitCode of the script
     * @param arguments that Java got, none when it was not started
     * @param message what was said besides
     */
    record Outcome(int exitCode, List<String> arguments, String message) {
        String after(String option) {
            int place = arguments.indexOf(option);
            assertTrue(place >= 0, option + " is not among " + arguments + "; " + message);
            return arguments.get(place + 1);
        }

        /** Returns what follows the options of the framework: the words, marked. */
        List<String> words() {
            return arguments.subList(arguments.indexOf("-data") + 2, arguments.size());
        }

        /** Returns whether Java had a variable in its environment. */
        boolean saw(String variable) {
            return message.lines().anyMatch(variable::equals);
        }
    }

    /**
     * Makes a machine of this one's programs with Java 17 and a display.
     *
     * @param folder for all that it consists of
     * @param programs names of those that it has
     */
    FakeMachine(Path folder, String... programs) throws IOException {
        this.folder = folder;
        tools = Files.createDirectory(folder.resolve("tools"));
        for (String program : programs) {
            Path real = Stream.of("/usr/bin", "/bin")
                    .map(directory -> Path.of(directory, program))
                    .filter(Files::isExecutable)
                    .findFirst()
                    .orElseThrow(() -> new AssertionError(program + " is not installed"));
            program(program, "exec " + real + " \"$@\"");
        }
        environment.put("PATH", tools.toString());
        environment.put("JAVA_HOME", javaHome("java-17", "17.0.15").toString());
        environment.put("DISPLAY", ":9");
    }

    Path tools() {
        return tools;
    }

    /** Adds a program, or puts it in the place of another. */
    void program(String name, String script) throws IOException {
        executable(tools.resolve(name), "#!/bin/sh\n" + script + "\n");
    }

    /** Has the machine say of itself what it is. */
    void isA(String system, String processor) throws IOException {
        program("uname", "case $1 in -m) echo " + processor + " ;; *) echo " + system + " ;; esac");
    }

    /** Makes an installation of the product with nothing in it but what its start script seeks; returns the script. */
    Path install(Path installation) throws IOException {
        Files.createDirectories(installation.resolve("plugins"));
        Files.createDirectories(installation.resolve("configuration"));
        Files.createFile(installation.resolve("plugins/org.eclipse.equinox.launcher_1.0.0.jar"));
        return copyScript("unix/ohmstead", installation);
    }

    /** Copies a start script into an installation, with the real machine's own Javas put out of its sight. */
    Path copyScript(String name, Path installation) throws IOException {
        return copyBlind(START.resolve(name), installation.resolve(Path.of(name).getFileName()));
    }

    /** Copies a script with the real machine's own Javas put out of its sight. */
    Path copyBlind(Path script, Path copy) throws IOException {
        Path nowhere = folder.resolve("nowhere");
        String text = Files.readString(script)
                .replace("/usr/lib/jvm/", nowhere + "/")
                .replace("/Library/Java/JavaVirtualMachines/", nowhere + "/");
        return executable(copy, text);
    }

    /** Makes a home of Java of a version, with a compiler. */
    Path javaHome(String name, String version) throws IOException {
        Path home = folder.resolve(name);
        Files.createDirectories(home.resolve("bin"));
        executable(home.resolve("bin/javac"), "#!/bin/sh\nexit 1\n");
        executable(
                home.resolve("bin/java"),
                """
                #!/bin/sh
                if [ "$1" = -version ]; then
                    echo 'openjdk version "%s" 2025-04-15' >&2
                    exit 0
                fi
                for argument in "$@"; do printf '%%s\\n' "$argument"; done
                echo "OHMSTEAD_STATE=${OHMSTEAD_STATE:-}" >&2
                echo "OHMSTEAD_DEMO_OUTPUT=${OHMSTEAD_DEMO_OUTPUT:-}" >&2
                exit "${FAKE_EXIT:-0}"
                """
                        .formatted(version));
        return home;
    }

    static Path executable(Path file, String text) throws IOException {
        Files.writeString(file, text);
        assertTrue(file.toFile().setExecutable(true), "cannot be made executable: " + file);
        return file;
    }

    Outcome run(Path script, String... words) throws IOException, InterruptedException {
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
