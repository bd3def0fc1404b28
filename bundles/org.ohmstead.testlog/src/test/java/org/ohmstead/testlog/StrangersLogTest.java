// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.LogIndex;
import org.sqlite.SQLiteDataSource;

/** Logs that somebody made to harm whoever opens them. */
class StrangersLogTest {
    private static final Duration SOON = Duration.ofSeconds(30);

    @TempDir
    Path folder;

    private Path log() throws TestLogException {
        Path file = folder.resolve(TestLog.FILE_NAME);
        try (TestLog log = TestLog.open(file)) {
            log.append(LogGenerator.reading(1));
        }
        return file;
    }

    private static void change(Path file, String... statements) throws SQLException {
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + file);
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.executeUpdate(sql);
            }
        }
    }

    private static void refused(Path file) {
        for (boolean reading : new boolean[] {true, false}) {
            String message = assertTimeoutPreemptively(SOON, () -> assertThrows(TestLogException.class, () -> {
                        TestLog opened = reading ? TestLog.openReadOnly(file) : TestLog.open(file);
                        opened.close();
                    })
                    .getMessage());
            assertTrue(message.contains(file.toString()), message);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "CREATE VIEW entry AS SELECT * FROM kept",
                "CREATE VIEW Entry AS WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT x FROM n) SELECT x AS seq,"
                        + " 'reading' AS kind, 'R0001' AS entry_id, '' AS recorded_at, '' AS body, '' AS previous_hash, ''"
                        + " AS hash FROM n",
                "CREATE VIRTUAL TABLE entry USING fts5(seq, kind, entry_id, recorded_at, body, previous_hash, hash)"
            })
    void aTableThatIsReckonedWhenItIsReadIsRefused(String feigned) throws Exception {
        Path file = log();
        change(file, "ALTER TABLE entry RENAME TO kept", feigned);
        refused(file);
    }

    @Test
    void aViewOfOnesOwnIsNobodysHarm() throws Exception {
        Path file = log();
        change(file, "CREATE VIEW readings AS SELECT * FROM entry WHERE kind = 'reading'");
        try (TestLog log = TestLog.openReadOnly(file)) {
            assertEquals(List.of(), log.verify().faults());
        }
    }

    private static void makePipe(Path pipe) throws Exception {
        boolean made;
        try {
            made = new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0;
        } catch (IOException none) {
            made = false;
        }
        assumeTrue(made, "this system has no named pipes");
    }

    @Test
    void aPipeKeepsNobodyWaiting() throws Exception {
        Path pipe = folder.resolve(TestLog.FILE_NAME);
        makePipe(pipe);
        refused(pipe);
    }

    @Test
    @Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void neitherDoPipesInPlaceOfACaptureOrOfTheIndex() throws Exception {
        Path capture = folder.resolve("a.wav");
        makePipe(capture);
        TestLogException refused = assertThrows(TestLogException.class, () -> CaptureStore.sha256(capture));
        assertTrue(refused.getMessage().contains("it is a pipe or a device and no file"), refused.getMessage());
        Path file = log();
        makePipe(LogIndex.beside(file));
        try (TestLog log = TestLog.openReadOnly(file)) {
            assertEquals(List.of(), log.verify().faults());
            try (LogIndex index = LogIndex.open(LogIndex.beside(file), log.rows())) {
                assertEquals(1, index.refresh(IndexProgress.NONE));
            } catch (TestLogException said) {
                assertTrue(
                        said.getMessage()
                                .contains(LogIndex.beside(file).getFileName().toString()),
                        said.getMessage());
            }
        }
    }

    @Test
    void anIndexWithViewsOrTriggersIsMadeAnew() throws Exception {
        Path file = log();
        Path beside = LogIndex.beside(file);
        try (TestLog log = TestLog.openReadOnly(file);
                LogIndex index = LogIndex.open(beside, log.rows())) {
            assertEquals(1, index.refresh(IndexProgress.NONE));
        }
        change(beside, "CREATE TRIGGER harm AFTER INSERT ON block BEGIN DELETE FROM content; END");
        try (TestLog log = TestLog.open(file);
                LogIndex index = LogIndex.open(beside, log.rows())) {
            log.append(LogGenerator.reading(2));
            assertEquals(2, index.refresh(IndexProgress.NONE));
        }
        assertFalse(
                new String(Files.readAllBytes(beside), StandardCharsets.ISO_8859_1).contains("CREATE TRIGGER harm"));
    }
}
