// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.report.ReportException;

class AtomicFileTest {
    private static final byte[] CONTENT = "new".getBytes(StandardCharsets.UTF_8);

    @TempDir
    private Path folder;

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void aLinkStaysALinkAndWhatItLeadsToIsReplaced() throws Exception {
        Path real = Files.writeString(folder.resolve("real.csv"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), real);
        AtomicFile.write(link, "The table", stream -> stream.write(CONTENT));
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("new", Files.readString(real));
        assertEquals(List.of("link.csv", "real.csv"), names());
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void aNamedPipeIsWrittenToAndStaysAPipe() throws Exception {
        Path pipe = folder.resolve("pipe");
        Process maker = new ProcessBuilder("mkfifo", pipe.toString()).start();
        assertTrue(maker.waitFor(20, TimeUnit.SECONDS) && maker.exitValue() == 0, "mkfifo failed");
        Process reader = new ProcessBuilder("cat", pipe.toString()).start();
        try {
            CompletableFuture<Void> writer = CompletableFuture.runAsync(() -> write(pipe));
            writer.get(20, TimeUnit.SECONDS);
            assertFalse(Files.isRegularFile(pipe), "the pipe was replaced by a file");
            assertEquals("new", new String(reader.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        } finally {
            reader.destroyForcibly();
        }
    }

    private static void write(Path pipe) {
        try {
            AtomicFile.write(pipe, "The table", stream -> stream.write(CONTENT));
        } catch (ReportException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void saysWhyInPlainWordsAndLeavesNothingBehind() throws Exception {
        Path missing = folder.resolve("missing/x.csv");
        assertPlain(missing);
        assertPlain(folder);
        assertEquals(List.of(), names());
    }

    @Test
    void afterAFailureTheOldFileIsThere() throws Exception {
        Path file = Files.writeString(folder.resolve("x.csv"), "old");
        ReportException failure = assertThrows(
                ReportException.class,
                () -> AtomicFile.write(file, "The table", stream -> {
                    stream.write(CONTENT);
                    throw new IOException("No space left on device");
                }));
        assertEquals(
                "The table could not be written to " + file + ": No space left on device. Check that the folder exists,"
                        + " may be written to and has space left.",
                failure.getMessage());
        assertEquals("old", Files.readString(file));
        assertEquals(List.of("x.csv"), names());
    }

    private static void assertPlain(Path target) {
        String sentence = assertThrows(
                        ReportException.class,
                        () -> AtomicFile.write(target, "The table", stream -> stream.write(CONTENT)))
                .getMessage();
        assertFalse(sentence.contains("Exception") || sentence.contains(".part"), sentence);
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
