// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RecoveryFileTest {
    @TempDir
    Path folder;

    private Path file;
    private RecoveryCopy copy;

    @BeforeEach
    void make() {
        file = folder.resolve(RecoveryFile.FILE_NAME);
        copy = new RecoveryCopy(
                Instant.parse("2026-04-01T14:05:00.123Z"),
                "ab".repeat(32),
                List.of("Set load", "Set \"title\""),
                7,
                Samples.project());
    }

    @Test
    void readsWhatItWrote() throws Exception {
        RecoveryFile.write(file, copy);
        assertEquals(copy, RecoveryFile.read(file));
        assertEquals(List.of(file), RecoveryFile.list(folder));
    }

    @Test
    void isNoProject() throws Exception {
        RecoveryFile.write(file, copy);
        assertThrows(ProjectFileException.class, () -> ProjectFile.read(folder));
        assertThrows(ProjectFileException.class, () -> ProjectFile.read(file));
        ProjectFile.write(folder, Samples.project(), Optional.empty());
        Path project = folder.resolve(ProjectFile.FILE_NAME);
        assertThrows(ProjectFileException.class, () -> RecoveryFile.read(project));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "{",
                "{\"formatVersion\": 1}",
                "{\"formatVersion\": 2}",
                "{\"formatVersion\": 1, \"madeAt\": \"2026-04-01T14:05:00Z\", \"editCount\": 1, \"project\": 3}",
                "{\"formatVersion\": 1, \"madeAt\": \"2026-04-01T14:05:00Z\", \"editCount\": 1, \"project\": {}}"
            })
    void refusesWhatIsNoCopy(String content) throws Exception {
        Files.writeString(file, content);
        assertThrows(ProjectFileException.class, () -> RecoveryFile.read(file));
        assertEquals(content, Files.readString(file));
    }

    @Test
    void refusesACopyCutOffAnywhere() throws Exception {
        RecoveryFile.write(file, copy);
        String whole = Files.readString(file).strip();
        for (int length = 0; length < whole.length(); length += 97) {
            Files.writeString(file, whole.substring(0, length));
            assertThrows(ProjectFileException.class, () -> RecoveryFile.read(file));
        }
    }

    @Test
    void renamesAndDeletes() throws Exception {
        RecoveryFile.write(file, copy);
        Path aside = RecoveryFile.rename(file, RecoveryFile.FILE_NAME + RecoveryFile.BROKEN_SUFFIX);
        assertFalse(Files.exists(file));
        assertTrue(Files.exists(aside));
        assertEquals(List.of(), RecoveryFile.list(folder));
        RecoveryFile.delete(aside);
        RecoveryFile.delete(aside);
        assertFalse(Files.exists(aside));
    }

    @Test
    void aLoadedProjectKnowsTheHashOfItsBytes() throws Exception {
        LoadedProject written = ProjectFile.write(folder, Samples.project(), Optional.empty());
        byte[] bytes = Files.readAllBytes(folder.resolve(ProjectFile.FILE_NAME));
        String hash =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        assertEquals(hash, written.fileSha256());
        assertEquals(hash, ProjectFile.read(folder).fileSha256());
    }
}
