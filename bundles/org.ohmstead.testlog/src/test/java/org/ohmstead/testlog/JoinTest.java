// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.testlog.VerifyFault.Kind;
import org.ohmstead.testlog.chain.ChainCheck;
import org.ohmstead.testlog.chain.ChainedRow;

class JoinTest {
    @TempDir
    Path folder;

    private TestLog open(String name) throws TestLogException {
        return TestLog.open(folder.resolve(name + ".db"));
    }

    private void fill(String name, int from, int to) throws TestLogException {
        try (TestLog log = open(name)) {
            for (int number = from; number <= to; number++) {
                log.append(SampleReadings.reading(number));
            }
        }
    }

    private JoinReport join(String into, String other) throws TestLogException {
        try (TestLog log = open(into);
                TestLog second = TestLog.openReadOnly(folder.resolve(other + ".db"))) {
            return log.join(second, "Bench of " + other, "N. N.");
        }
    }

    private List<String> ids(String name) throws TestLogException {
        try (TestLog log = TestLog.openReadOnly(folder.resolve(name + ".db"))) {
            assertEquals(List.of(), log.verify().faults());
            return log.entries(LogQuery.everything()).stream().map(LogEntry::id).toList();
        }
    }

    @Test
    void anotherLogsEntriesComeUnchangedBeforeTheEntryThatSaysSo() throws Exception {
        fill("a", 1, 2);
        fill("b", 10, 12);
        JoinReport report = join("a", "b");
        assertEquals(3, report.added());
        assertEquals(
                "3 entries of Bench of b came as chain B; the entry J0001 holds the head of that chain.",
                report.sentence());
        assertEquals(List.of("R0001", "R0002", "B/R0001", "B/R0002", "B/R0003", "J0001"), ids("a"));
        try (TestLog log = open("a");
                TestLog other = open("b")) {
            JoinNote note = report.entry().orElseThrow().join().orElseThrow();
            assertEquals(other.headHash(), note.headHash());
            assertEquals(other.chains().get(0).chain(), note.chain());
            assertEquals(0, note.afterSequence());
            assertEquals(3, note.lastSequence());
            assertEquals("N. N.", note.who());
            LogEntry theirs = other.entry("R0002").orElseThrow();
            LogEntry here = log.entry("b/r0002").orElseThrow();
            assertEquals(theirs.hash(), here.hash());
            assertEquals(theirs.bodyText(), here.bodyText());
            assertEquals("B", here.chain());
            assertTrue(here.joined());
            assertEquals(2, here.sequence());
            assertEquals(5, log.readings().size());
            LogQuery own = LogQuery.everything().withJoined(false);
            assertEquals(3, log.entries(own).size());
            ChainInfo chain = log.chains().get(1);
            assertEquals("Bench of b", chain.name());
            assertEquals(3, chain.entries());
            assertEquals(other.headHash(), chain.headHash());
            assertTrue(log.verify(Optional.of(other.headHash())).intact(), "the joined head is a head to expect");
        }
    }

    @Test
    void joiningAgainAddsOnlyWhatIsNew() throws Exception {
        fill("a", 1, 1);
        fill("b", 10, 11);
        join("a", "b");
        JoinReport nothing = join("a", "b");
        assertEquals(0, nothing.added());
        assertEquals(Optional.empty(), nothing.entry());
        assertTrue(nothing.sentence().startsWith("Nothing was joined: "), nothing.sentence());
        fill("b", 12, 12);
        JoinReport more = join("a", "b");
        assertEquals(1, more.added());
        assertEquals(2, more.entry().orElseThrow().join().orElseThrow().afterSequence());
        assertEquals(List.of("R0001", "B/R0001", "B/R0002", "J0001", "B/R0003", "J0002"), ids("a"));
    }

    @Test
    void aCopyThatWentAnotherWayComesFromTheForkOn() throws Exception {
        fill("a", 1, 3);
        Files.copy(folder.resolve("a.db"), folder.resolve("b.db"));
        fill("a", 4, 5);
        fill("b", 14, 16);
        try (TestLog copy = open("b")) {
            copy.voidEntry("R0002", "a lead was loose", "");
            copy.voidEntry("R0005", "wrong", "");
        }
        JoinReport report = join("a", "b");
        assertEquals(5, report.added());
        assertTrue(
                report.sentence().contains("5 entries of Bench of b behind number 3 came as chain B"),
                report.sentence());
        assertTrue(report.sentence().contains("The other log voids R0002, which this log has too"), report.sentence());
        assertEquals(
                List.of(
                        "R0001", "R0002", "R0003", "R0004", "R0005", "B/R0004", "B/R0005", "B/R0006", "B/V0001",
                        "B/V0002", "J0001"),
                ids("a"));
        try (TestLog log = open("a")) {
            assertFalse(log.entry("R0002").orElseThrow().voided(), "voids of a joined chain count there");
            assertFalse(log.entry("R0005").orElseThrow().voided());
            assertTrue(log.entry("B/R0005").orElseThrow().voided());
            assertEquals(4, log.chains().get(1).firstSequence());
        }
        assertEquals(0, join("a", "b").added());
        fill("b", 17, 17);
        assertEquals(1, join("a", "b").added());
        assertEquals(0, join("a", "a").added(), "a log has nothing that it has not");
        fill("c", 30, 30);
        assertEquals(13, join("c", "a").added(), "the fork comes along with what it parts from");
        ids("c");
    }

    @Test
    void aCopyThatOnlyGrewPartsAtTheEnd() throws Exception {
        fill("a", 1, 2);
        Files.copy(folder.resolve("a.db"), folder.resolve("b.db"));
        assertEquals(0, join("a", "b").added());
        fill("b", 3, 3);
        assertEquals(1, join("a", "b").added());
        assertEquals(List.of("R0001", "R0002", "B/R0003", "J0001"), ids("a"));
    }

    @Test
    void chainsThatWereJoinedThereComeAlong() throws Exception {
        fill("a", 1, 1);
        fill("b", 10, 11);
        fill("c", 20, 21);
        join("b", "c");
        JoinReport report = join("a", "b");
        assertEquals(5, report.added());
        assertEquals(
                List.of("R0001", "B/R0001", "B/R0002", "B/J0001", "J0001", "C/R0001", "C/R0002", "J0002"), ids("a"));
        assertEquals(0, join("a", "c").added(), "c came with b");
        assertEquals(3, join("b", "a").added(), "the reading and the two joins of a itself");
        ids("b");
    }

    @Test
    void voidsOfAJoinedChainCountInIt() throws Exception {
        fill("a", 1, 2);
        fill("b", 10, 11);
        try (TestLog other = open("b")) {
            other.voidEntry("R0001", "a lead was loose", "N. N.");
        }
        join("a", "b");
        try (TestLog log = open("a")) {
            assertFalse(log.entry("R0001").orElseThrow().voided());
            VoidNote why = log.entry("B/R0001").orElseThrow().voidedBy().orElseThrow();
            assertEquals("B/V0001", why.voidId());
            assertEquals("B/R0001", why.targetId());
            assertEquals(
                    List.of("R0001", "R0002", "B/R0002"),
                    log.readings().stream().map(LogEntry::id).toList());
            assertRefused("came with another log", () -> log.voidEntry("B/R0002", "wrong", ""));
        }
    }

    private static void assertRefused(String sentence, Executable action) {
        TestLogException refused = assertThrows(TestLogException.class, action);
        assertTrue(refused.getMessage().contains(sentence), refused.getMessage());
        assertTrue(refused.getMessage().endsWith("."), refused.getMessage());
    }

    @Test
    void aLogThatIsNotWholeIsRefusedAndNothingIsAdded() throws Exception {
        fill("a", 1, 1);
        fill("b", 10, 12);
        RawLog.dropTriggers(folder.resolve("b.db"));
        RawLog.execute(folder.resolve("b.db"), "UPDATE entry SET body = replace(body, 'step-11', 'step-99')");
        assertRefused("is not whole", () -> join("a", "b"));
        fill("c", 10, 12);
        assertRefused("the name of its bench is needed", () -> {
            try (TestLog log = open("a");
                    TestLog other = open("c")) {
                log.join(other, " ", "");
            }
        });
        assertEquals(List.of("R0001"), ids("a"));
        try (TestLog log = open("a")) {
            assertEquals(1, log.chains().size());
        }
    }

    // A body that gives its hash but is no reading: what comes from outside is read, and not only hashed.
    @Test
    void anEntryFromOutsideThatCannotBeReadIsRefused() throws Exception {
        fill("a", 1, 1);
        open("b").close();
        ChainedRow row = ChainedRow.chained(
                1, "reading", "R0001", "2026-03-02T09:14:05Z", "{\"a\":1}", ChainedRow.FIRST_PREVIOUS_HASH);
        RawLog.execute(
                folder.resolve("b.db"),
                "INSERT INTO entry VALUES (1, 'reading', 'R0001', '" + row.recordedAt() + "', '" + row.body() + "', '"
                        + row.previousHash() + "', '" + row.hash() + "')");
        assertRefused("R0001", () -> join("a", "b"));
        ChainCheck check = new ChainCheck();
        check.check(row);
        assertEquals(
                List.of(Kind.UNREADABLE),
                check.faults().stream().map(VerifyFault::kind).toList());
        assertEquals(List.of("R0001"), ids("a"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE joined_entry SET body = '{}' WHERE seq = 1",
                "DELETE FROM joined_entry WHERE seq = 2",
                "INSERT OR REPLACE INTO joined_entry VALUES (1, 1, 3, 'note', 'N0009', '', '{}', '', '')",
                "INSERT OR REPLACE INTO joined_entry VALUES (9, 1, 3, 'note', 'R0001', '', '{}', '', '')",
                "INSERT INTO joined_entry VALUES (9, 1, 9, 'note', 'N0009', '', '{}', '', '')",
                "INSERT OR REPLACE INTO joined_entry VALUES (9, 1, 2, 'note', 'N0009', '', '{}', '', '')",
                "UPDATE joined_chain SET name = 'x'",
                "DELETE FROM joined_chain",
                "INSERT OR REPLACE INTO joined_chain VALUES (1, 'x', 'C', 'x')",
                "INSERT OR REPLACE INTO joined_chain VALUES (2, 'x', 'B', 'x')",
            })
    void theFileItselfRefusesChangesOfJoinedChains(String sql) throws Exception {
        fill("a", 1, 1);
        fill("b", 10, 11);
        join("a", "b");
        SQLException refused = assertThrows(SQLException.class, () -> RawLog.execute(folder.resolve("a.db"), sql));
        assertTrue(refused.getMessage().contains("test log"), refused.getMessage());
        assertEquals(List.of("R0001", "B/R0001", "B/R0002", "J0001"), ids("a"));
    }

    // What is done to the joined chain behind the log's back, and what must be among the sentences about it.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "DELETE FROM joined_entry WHERE seq = 3|ends with number 2, although entries up to number 3",
                "DELETE FROM joined_entry WHERE seq = 1|begins with another entry, number 2",
                "DELETE FROM joined_entry|ends with number 0",
                "UPDATE joined_chain SET name = 'Third bench'|another label or name",
                "UPDATE joined_chain SET label = 'C'|another label or name",
                "UPDATE joined_chain SET chain = replace(chain, substr(chain, 1, 8), '00000000')|is missing",
                "UPDATE joined_entry SET body = '{}' WHERE seq = 2|The entry B/R0002, number 2 of the joined chain B, was changed",
            })
    void verifyingHoldsTheJoinedChainAgainstTheEntryThatSaysSo(String sql, String sentence) throws Exception {
        fill("a", 1, 1);
        fill("b", 10, 12);
        join("a", "b");
        RawLog.execute(
                folder.resolve("a.db"),
                "DROP TRIGGER joined_entry_is_never_changed",
                "DROP TRIGGER joined_entry_is_never_deleted",
                "DROP TRIGGER joined_chain_is_never_changed",
                sql);
        try (TestLog log = TestLog.openReadOnly(folder.resolve("a.db"))) {
            List<VerifyFault> faults = log.verify().faults();
            assertTrue(
                    faults.stream().anyMatch(fault -> fault.sentence().contains(sentence)), sentence + ": " + faults);
        }
    }

    @Test
    void anArchivingIsAnEntryWithItsHashes() throws Exception {
        String hash = "ab".repeat(32);
        ArchiveNote note = new ArchiveNote("a.zip", hash, "cd".repeat(32), List.of(hash, "ef".repeat(32)), "N. N.");
        try (TestLog log = open("a")) {
            LogEntry entry = log.archive(note);
            assertEquals("A0001", entry.id());
            assertEquals(EntryKind.ARCHIVE, entry.kind());
            assertTrue(entry.readable());
            assertEquals(Optional.of(note), log.entry("a0001").orElseThrow().archive());
            log.archive(new ArchiveNote("b.zip", hash, hash, List.of(), ""));
            assertTrue(log.verify().intact());
        }
        assertThrows(IllegalArgumentException.class, () -> new ArchiveNote("a.zip", "12", hash, List.of(), ""));
    }
}
