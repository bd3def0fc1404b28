// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Project;
import org.ohmstead.units.text.Messages;

@Timeout(120)
class ProjectLockTest {
    @TempDir
    Path folder;

    /** Takes the lock in a process of its own, says how it went, and holds it until its input ends. */
    static final class Holder {
        private Holder() {}

        public static void main(String[] arguments) throws IOException, ProjectFileException {
            try (ProjectLock lock = ProjectLock.acquire(Path.of(arguments[0]))) {
                System.out.println("holding " + lock.folder().getFileName());
                while (System.in.read() >= 0) {
                    continue;
                }
            } catch (ProjectFileException refused) {
                System.out.println(refused.getMessage());
            }
        }
    }

    private Process start() throws IOException, ClassNotFoundException {
        // The bundle itself does not import the annotations, but reading JSON needs them on the class path.
        Class<?> annotations = Class.forName("com.fasterxml.jackson.annotation.JsonProperty");
        Stream<Class<?>> needed = Stream.of(
                Holder.class,
                ProjectLock.class,
                Project.class,
                Messages.class,
                JsonNode.class,
                JsonParser.class,
                annotations);
        String classPath = Stream.concat(needed.map(ProjectLockTest::placeOf), Stream.of(placeOfTexts()))
                .distinct()
                .collect(Collectors.joining(File.pathSeparator));
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Duser.language=en",
                "-cp",
                classPath,
                Holder.class.getName(),
                folder.toString()));
        return new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    /** The texts lie beside the classes or, before they are put there, in a folder of their own. */
    private static String placeOfTexts() {
        String name = "/org/ohmstead/model/json/messages.properties";
        try {
            return Path.of(ProjectLock.class.getResource(name).toURI())
                    .resolve("../../../../..")
                    .normalize()
                    .toString();
        } catch (URISyntaxException broken) {
            throw new IllegalStateException(broken);
        }
    }

    private static String placeOf(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException broken) {
            throw new IllegalStateException(broken);
        }
    }

    private static String firstLine(Process process) throws IOException {
        BufferedReader reader = process.inputReader(StandardCharsets.UTF_8);
        return String.valueOf(reader.readLine());
    }

    private static void end(Process process) throws IOException, InterruptedException {
        process.getOutputStream().close();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    }

    @Test
    void aSecondWriterInTheSameProcessIsToldWhoHoldsIt() throws Exception {
        try (ProjectLock lock = ProjectLock.acquire(folder)) {
            ProjectFileException refused =
                    assertThrows(ProjectFileException.class, () -> ProjectLock.acquire(lock.folder()));
            assertTrue(
                    refused.getMessage()
                            .contains("process " + ProcessHandle.current().pid() + " on "),
                    refused.getMessage());
            assertTrue(refused.getMessage().contains("Close it there first"), refused.getMessage());
        }
        ProjectLock again = ProjectLock.acquire(folder);
        again.close();
        again.close();
    }

    @Test
    void theFileSaysWhoHoldsIt() throws Exception {
        ProjectLock lock = ProjectLock.acquire(folder);
        String owner = Files.readString(folder.resolve(ProjectLock.FILE_NAME));
        lock.close();
        assertTrue(
                owner.matches("process \\d+ on .+, user .+, since \\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\dZ\\n"),
                owner);
        assertEquals("", Files.readString(folder.resolve(ProjectLock.FILE_NAME)));
    }

    @Test
    void anotherProcessIsRefusedEvenAfterARefusalInThisOne() throws Exception {
        try (ProjectLock lock = ProjectLock.acquire(folder)) {
            assertThrows(ProjectFileException.class, () -> ProjectLock.acquire(lock.folder()));
            Process other = start();
            String answer = firstLine(other);
            end(other);
            assertTrue(
                    answer.contains("already open for writing: process "
                            + ProcessHandle.current().pid() + " on "),
                    answer);
        }
        Process other = start();
        assertTrue(firstLine(other).startsWith("holding "));
        end(other);
    }

    @Test
    void aKilledHolderLocksNothing() throws Exception {
        Process other = start();
        assertTrue(firstLine(other).startsWith("holding "));
        ProjectFileException refused = assertThrows(ProjectFileException.class, () -> ProjectLock.acquire(folder));
        assertTrue(refused.getMessage().contains("process " + other.pid() + " on "), refused.getMessage());
        other.destroyForcibly();
        assertTrue(other.waitFor(60, TimeUnit.SECONDS));
        ProjectLock.acquire(folder).close();
    }

    @Test
    void aMissingFolderIsSaidSo() {
        ProjectFileException failure =
                assertThrows(ProjectFileException.class, () -> ProjectLock.acquire(folder.resolve("none")));
        assertTrue(failure.getMessage().contains("cannot be locked"), failure.getMessage());
    }
}
