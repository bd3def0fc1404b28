// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

class CausedOutsideTest {
    @TempDir
    private Path folder;

    // The codes and what they mean: SQLite, "Result and Error Codes".
    @ParameterizedTest
    @CsvSource({
        "SQLITE_FULL, true",
        "SQLITE_IOERR, true",
        "SQLITE_IOERR_WRITE, true",
        "SQLITE_READONLY, true",
        "SQLITE_CANTOPEN, true",
        "SQLITE_BUSY, true",
        "SQLITE_CORRUPT, false",
        "SQLITE_NOTADB, false",
        "SQLITE_CONSTRAINT, false"
    })
    void tellsTheDisksFaultsFromTheLogs(SQLiteErrorCode code, boolean outside) {
        assertEquals(outside, new TestLogException("x", new SQLiteException("x", code)).causedOutside());
    }

    @Test
    void tellsAMissingRightFromAMissingFile() {
        assertTrue(new TestLogException("x", new AccessDeniedException("f")).causedOutside());
        assertFalse(new TestLogException("x", new NoSuchFileException("f")).causedOutside());
        assertFalse(new TestLogException("x").causedOutside());
    }

    @Test
    void aStoreThatCannotBeWrittenIsAnOutsideFailureInPlainWords() throws Exception {
        Path capture = Files.writeString(folder.resolve("a.wav"), "content");
        Files.writeString(folder.resolve("captures"), "a file where the store's folder should be");
        TestLogException failure = assertThrows(TestLogException.class, () -> new CaptureStore(folder).store(capture));
        assertTrue(failure.causedOutside());
        assertFalse(failure.getMessage().contains("Exception"), failure.getMessage());
    }
}
