// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.LogGenerator;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyFault.Kind;
import org.sqlite.SQLiteDataSource;

class LogIndexFileTest {
    private static final int ENTRIES = 4500;

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve(TestLog.FILE_NAME);
    }

    private Path indexFile() {
        return LogIndex.beside(file());
    }

    private static void execute(Path file, String... statements) throws Exception {
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + file);
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.executeUpdate(sql);
            }
        }
    }

    private static List<String> ids(LogIndex index) throws TestLogException {
        return index.find(Find.EVERYTHING, FindOrder.AS_LOGGED).page(0, Integer.MAX_VALUE).stream()
                .map(IndexedEntry::id)
                .toList();
    }

    private void assertIndexes(TestLog log, LogIndex index) throws TestLogException {
        index.refresh(IndexProgress.NONE);
        assertEquals(
                log.entries(LogQuery.everything()).stream()
                        .map(entry -> entry.id())
                        .toList(),
                ids(index));
    }

    private void makeIndexed() throws Exception {
        LogGenerator.write(file(), ENTRIES);
        try (TestLog log = TestLog.open(file());
                LogIndex index = LogIndex.open(indexFile(), log.rows())) {
            index.refresh(IndexProgress.NONE);
        }
    }

    @Test
    void anIndexOfAnotherVersionOrProgramIsMadeAnew() throws Exception {
        LogGenerator.write(file(), 50);
        try (TestLog log = TestLog.open(file())) {
            for (String sql : List.of("PRAGMA user_version = 99", "PRAGMA application_id = 1", "DROP TABLE content")) {
                try (LogIndex index = LogIndex.open(indexFile(), log.rows())) {
                    assertIndexes(log, index);
                }
                execute(indexFile(), sql);
                try (LogIndex index = LogIndex.open(indexFile(), log.rows())) {
                    assertIndexes(log, index);
                    assertTrue(
                            index.state().remark().contains("made anew"),
                            index.state().toString());
                    assertTrue(index.state().kept());
                }
            }
            Files.writeString(indexFile(), "These are my notes, and not a database at all.\n".repeat(100));
            try (LogIndex index = LogIndex.open(indexFile(), log.rows())) {
                assertIndexes(log, index);
            }
        }
    }

    /** Whatever byte of the index is wrong, what is found is right. */
    @Test
    void aDamagedIndexIsMadeAnewAndNeverFindsSomethingElse() throws Exception {
        makeIndexed();
        byte[] whole = Files.readAllBytes(indexFile());
        Random random = new Random(3);
        int remade = 0;
        try (TestLog log = TestLog.openReadOnly(file())) {
            List<String> ids = log.entries(LogQuery.everything()).stream()
                    .map(entry -> entry.id())
                    .toList();
            for (int round = 0; round < 25; round++) {
                byte[] damaged = whole.clone();
                for (int some = 0; some < 1 + round; some++) {
                    damaged[random.nextInt(damaged.length)] ^= (byte) (1 + random.nextInt(255));
                }
                Files.write(indexFile(), damaged);
                try (LogIndex index = LogIndex.open(indexFile(), log.rows())) {
                    index.refresh(IndexProgress.NONE);
                    assertEquals(ids, idsIfNeedBeAgain(index), "round " + round);
                    remade += index.state().remark().isEmpty() ? 0 : 1;
                }
            }
        }
        assertTrue(remade > 8, "made anew: " + remade);
    }

    /** A page that is damaged says so once; the next search has made the index anew. */
    private static List<String> idsIfNeedBeAgain(LogIndex index) throws TestLogException {
        try {
            return ids(index);
        } catch (TestLogException damaged) {
            assertTrue(damaged.getMessage().endsWith("Search again."), damaged.getMessage());
            return ids(index);
        }
    }

    @Test
    void aFileCutShortIsMadeAnew() throws Exception {
        makeIndexed();
        byte[] whole = Files.readAllBytes(indexFile());
        try (TestLog log = TestLog.openReadOnly(file())) {
            for (int length = 0; length < whole.length; length += whole.length / 4) {
                Files.write(indexFile(), java.util.Arrays.copyOf(whole, length));
                try (LogIndex index = LogIndex.open(indexFile(), log.rows())) {
                    assertIndexes(log, index);
                }
            }
        }
    }

    @Test
    void theIndexOfAnotherLogIsNotBelieved() throws Exception {
        Path other = folder.resolve("other.db");
        LogGenerator.write(other, 30);
        try (TestLog log = TestLog.open(other);
                LogIndex index = LogIndex.open(indexFile(), log.rows())) {
            assertIndexes(log, index);
        }
        try (TestLog log = TestLog.open(file())) {
            log.note("Another log.", "");
            try (LogIndex index = LogIndex.open(indexFile(), log.rows())) {
                assertIndexes(log, index);
                assertEquals(List.of("N0001"), ids(index));
            }
            assertTrue(log.verify().intact(), "the other log's end is not looked for");
        }
    }

    @Test
    void whereNoFileCanBeWrittenTheIndexLivesInMemory() throws Exception {
        LogGenerator.write(file(), 50);
        try (TestLog log = TestLog.openReadOnly(file());
                LogIndex index = LogIndex.open(folder.resolve("none").resolve("index.db"), log.rows())) {
            assertIndexes(log, index);
            assertFalse(index.state().kept());
            assertTrue(
                    index.state().remark().contains("in memory only"),
                    index.state().remark());
        }
        try (TestLog log = TestLog.openReadOnly(file());
                LogIndex index = LogIndex.inMemory(log.rows())) {
            assertIndexes(log, index);
        }
    }

    @Test
    void severalMayUseOneFileAtOnce() throws Exception {
        LogGenerator.write(file(), ENTRIES);
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try (TestLog log = TestLog.open(file())) {
            List<Future<Long>> made = new java.util.ArrayList<>();
            for (int number = 0; number < 4; number++) {
                made.add(threads.submit(() -> {
                    // Each with its own connections, as other processes would have them.
                    try (TestLog own = TestLog.openReadOnly(file());
                            LogIndex index = LogIndex.open(indexFile(), own.rows())) {
                        long added = index.refresh(IndexProgress.NONE);
                        assertEquals(
                                ENTRIES,
                                index.find(Find.EVERYTHING, FindOrder.AS_LOGGED).size());
                        return added;
                    }
                }));
            }
            long sum = 0;
            for (Future<Long> each : made) {
                sum += each.get();
            }
            assertEquals(ENTRIES, sum, "each entry was taken in once");
            try (LogIndex one = LogIndex.open(indexFile(), log.rows());
                    LogIndex other = LogIndex.open(indexFile(), log.rows())) {
                log.append(LogGenerator.reading(1));
                assertEquals(1, one.refresh(IndexProgress.NONE));
                assertEquals(0, other.refresh(IndexProgress.NONE));
                assertEquals(ENTRIES + 1, ids(other).size());
                log.voidEntry(ids(one).get(ENTRIES), "wrong", "");
                assertEquals(1, other.refresh(IndexProgress.NONE));
                assertIndexes(log, one);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void whatWasFoundInAnIndexThatIsClosedIsSaidToBeGone() throws Exception {
        LogGenerator.write(file(), 20);
        try (TestLog log = TestLog.openReadOnly(file())) {
            Found found;
            try (LogIndex index = LogIndex.open(indexFile(), log.rows())) {
                index.refresh(IndexProgress.NONE);
                found = index.find(Find.EVERYTHING, FindOrder.AS_LOGGED);
            }
            TestLogException gone = assertThrows(TestLogException.class, () -> found.page(0, 5));
            assertTrue(gone.getMessage().endsWith("Search again."), gone.getMessage());
        }
    }

    private void cutOff(long behind) throws Exception {
        String guard = "CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry BEGIN"
                + " SELECT RAISE(ABORT, 'An entry of the test log is never deleted; void it with a reason.'); END";
        execute(file(), "DROP TRIGGER entry_is_never_deleted", "DELETE FROM entry WHERE seq > " + behind, guard);
    }

    private List<VerifyFault> faults() throws TestLogException {
        try (TestLog log = TestLog.openReadOnly(file())) {
            return log.verify().faults();
        }
    }

    @Test
    void aLogCutOffAtItsEndIsFoundByTheIndexThatSawIt() throws Exception {
        makeIndexed();
        assertEquals(List.of(), faults());
        cutOff(ENTRIES - 3);
        List<VerifyFault> faults = faults();
        assertEquals(
                List.of(Kind.CUT_OFF), faults.stream().map(VerifyFault::kind).toList());
        assertEquals(ENTRIES - 2, faults.get(0).sequence());
        assertTrue(faults.get(0).sentence().contains("has seen the entry number " + ENTRIES), faults.toString());
        assertTrue(faults.get(0).sentence().contains("the log ends with number " + (ENTRIES - 3)), faults.toString());
        // Neither catching up with the shorter log nor what is added to it makes it forget.
        for (int round = 0; round < 2; round++) {
            try (TestLog log = TestLog.open(file());
                    LogIndex index = LogIndex.open(indexFile(), log.rows())) {
                assertIndexes(log, index);
                for (int more = 0; more < 4; more++) {
                    log.note("Written instead.", "");
                }
            }
            assertEquals(
                    List.of(Kind.CUT_OFF),
                    faults().stream().map(VerifyFault::kind).toList());
        }
        // A damaged index, or one of another version, keeps what it saw as long as that can be read.
        execute(indexFile(), "PRAGMA user_version = 99");
        try (TestLog log = TestLog.open(file());
                LogIndex index = LogIndex.open(indexFile(), log.rows())) {
            assertIndexes(log, index);
        }
        assertEquals(
                List.of(Kind.CUT_OFF), faults().stream().map(VerifyFault::kind).toList());
        Files.delete(indexFile());
        assertEquals(List.of(), faults(), "as the sentence says, deleting the index accepts the log as it is");
    }

    @Test
    void aLogThatWasEmptiedIsFound() throws Exception {
        makeIndexed();
        cutOff(0);
        List<VerifyFault> faults = faults();
        assertEquals(
                List.of(Kind.CUT_OFF), faults.stream().map(VerifyFault::kind).toList());
        assertEquals(1, faults.get(0).sequence());
    }

    @Test
    void anIndexThatCannotBeReadTellsNothing() throws Exception {
        makeIndexed();
        Files.writeString(indexFile(), "no database");
        assertEquals(List.of(), faults());
    }
}
