// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.LogIndex;

/** Logs as earlier versions wrote them; the fixture holds what the first version made, statement by statement. */
class OlderVersionsTest {
    private static final String HEAD = "16894e4a431a495483e181c4a23610a7e81a4f91ff8b1e9537e1b1fe17e5fa11";

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void makeTheOldLog() throws Exception {
        file = folder.resolve(TestLog.FILE_NAME);
        RawLog.execute(file, statements());
    }

    private static String[] statements() throws IOException {
        try (InputStream in = OlderVersionsTest.class.getResourceAsStream("log-version-1.sql")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).split(";\n");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void anOlderLogIsReadAsItIs(int version) throws Exception {
        RawLog.execute(file, "PRAGMA user_version = " + version);
        byte[] before = Files.readAllBytes(file);
        try (TestLog log = TestLog.openReadOnly(file);
                LogIndex index = LogIndex.inMemory(log.rows())) {
            assertEquals(HEAD, log.headHash());
            assertEquals(
                    List.of("R0001", "N0001", "R0002", "V0001"),
                    log.entries(LogQuery.everything()).stream()
                            .map(LogEntry::id)
                            .toList());
            assertEquals(
                    List.of("R0002"), log.readings().stream().map(LogEntry::id).toList());
            assertEquals(1, log.chains().size());
            assertEquals(List.of(), log.verify(Optional.of(HEAD)).faults());
            index.refresh(IndexProgress.NONE);
            assertEquals(
                    "R0001",
                    index.find(Find.parse("state:voided"), FindOrder.AS_LOGGED)
                            .page(0, 9)
                            .get(0)
                            .id());
        }
        assertEquals(Integer.toString(version), RawLog.text(file, "PRAGMA user_version"), "reading changes nothing");
        assertEquals(before.length, Files.size(file));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void anOlderLogIsAddedToAndThenHasTheNewTables(int version) throws Exception {
        RawLog.execute(file, "PRAGMA user_version = " + version);
        Path other = folder.resolve("other.db");
        try (TestLog log = TestLog.open(file);
                TestLog second = TestLog.open(other)) {
            second.note("Second bench.", "");
            log.append(SampleReadings.reading(3));
            assertEquals(1, log.join(second, "Second bench", "").added());
            assertEquals(List.of(), log.verify(Optional.of(HEAD)).faults());
            assertEquals(6, log.entry("J0001").orElseThrow().sequence());
        }
        assertEquals("3", RawLog.text(file, "PRAGMA user_version"));
    }

    /** A reader that opened an old log sees what a writer joins afterwards. */
    @Test
    void aReaderOfAnOldLogSeesWhatIsJoinedAfterwards() throws Exception {
        RawLog.execute(file, "PRAGMA user_version = 2", "PRAGMA journal_mode = WAL");
        try (TestLog reader = TestLog.openReadOnly(file)) {
            assertEquals(1, reader.chains().size());
            try (TestLog log = TestLog.open(file);
                    TestLog second = TestLog.open(folder.resolve("other.db"))) {
                second.note("Second bench.", "");
                log.join(second, "Second bench", "");
            }
            assertEquals(2, reader.chains().size());
            assertTrue(reader.entry("B/N0001").isPresent());
            assertEquals(List.of(), reader.verify().faults());
        }
    }
}
