// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class WholeFilesTest {
    private static final String UNIQUE = ".01234567-89ab-cdef-0123-456789abcdef.part";

    @TempDir
    private Path folder;

    private Path left(String name, Duration ago) throws IOException {
        Path file = Files.writeString(folder.resolve(name), "half");
        Files.setLastModifiedTime(file, FileTime.from(Instant.now().minus(ago)));
        return file;
    }

    @Test
    void whatAKilledProgramLeftOfAFileGoesWithTheNextWrite() throws Exception {
        Path abandoned = left(".a.csv" + UNIQUE, Duration.ofHours(2));
        Path inWork = left(".a.csv" + UNIQUE.replace("01", "02"), Duration.ofMinutes(10));
        Path ofAnother = left(".b.csv" + UNIQUE, Duration.ofHours(2));
        Path ofTheUser = left("a.csv.part", Duration.ofHours(2));
        assertEquals(folder.resolve("a.csv"), WholeFiles.writeText(folder.resolve("a.csv"), "whole"));
        assertFalse(Files.exists(abandoned));
        assertTrue(Files.exists(inWork), "another program may be at it");
        assertTrue(Files.exists(ofAnother) && Files.exists(ofTheUser), "what has nothing to do with it stays");
        assertEquals("whole", Files.readString(folder.resolve("a.csv")));
    }

    @Test
    void whereNobodyElseWritesWhatIsLeftGoesAtOnce() throws Exception {
        left(".a.json" + UNIQUE, Duration.ZERO);
        left(".c.json" + UNIQUE, Duration.ZERO);
        assertEquals(1, Leftovers.tidy(folder, Leftovers.partsOf("a\\.json|b\\.json"), Duration.ZERO));
        assertEquals(0, Leftovers.tidy(folder.resolve("none"), Leftovers.partsOf("a"), Duration.ZERO));
    }

    @Test
    void aMissingFolderIsNamedAndNotThePart() {
        NoSuchFileException missing = assertThrows(
                NoSuchFileException.class, () -> WholeFiles.writeText(folder.resolve("none/a.csv"), "text"));
        assertEquals(folder.resolve("none").toString(), missing.getFile());
    }

    @Test
    void whatTheContentThrowsComesThroughAndLeavesNothing() throws Exception {
        Path file = Files.writeString(folder.resolve("a.csv"), "old");
        assertThrows(
                InterruptedException.class,
                () -> WholeFiles.<InterruptedException>write(file, stream -> {
                    stream.write(1);
                    throw new InterruptedException();
                }));
        assertEquals("old", Files.readString(file));
        try (var all = Files.list(folder)) {
            assertEquals(1, all.count());
        }
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void aNamedPipeIsWrittenToAndStaysAPipe() throws Exception {
        Path pipe = folder.resolve("pipe");
        Process maker = new ProcessBuilder("mkfifo", pipe.toString()).start();
        assertTrue(maker.waitFor(20, TimeUnit.SECONDS) && maker.exitValue() == 0, "mkfifo failed");
        Process reader = new ProcessBuilder("cat", pipe.toString()).start();
        try {
            WholeFiles.writeText(pipe, "text");
            assertFalse(Files.isRegularFile(pipe), "the pipe was replaced by a file");
            assertEquals("text", new String(reader.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        } finally {
            reader.destroyForcibly();
        }
    }
}
