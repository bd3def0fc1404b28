// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Reading;
import org.ohmstead.model.json.ReadingJson;

class TestLogTest {
    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve(TestLog.FILE_NAME);
    }

    private static List<String> ids(List<LogEntry> entries) {
        return entries.stream().map(LogEntry::id).toList();
    }

    @Test
    void whatIsAppendedReadsBackEqual() throws Exception {
        Reading reading = SampleReadings.reading(1);
        LogEntry appended;
        try (TestLog log = TestLog.open(file())) {
            appended = log.append(reading);
            assertEquals(Optional.of(appended), log.entry("R0001"));
        }
        try (TestLog log = TestLog.openReadOnly(file())) {
            LogEntry read = log.entries(LogQuery.everything()).get(0);
            assertEquals(appended, read);
            assertEquals(Optional.of(reading), read.reading());
            assertEquals(ReadingJson.toCanonicalText(reading), read.bodyText());
            assertEquals(TestLog.FIRST_PREVIOUS_HASH, read.previousHash());
            assertEquals(read.hash(), log.headHash());
        }
    }

    @Test
    void idsCountEachKindAndSequenceCountsAll() throws Exception {
        try (TestLog log = TestLog.open(file())) {
            assertEquals(TestLog.FIRST_PREVIOUS_HASH, log.headHash());
            log.append(SampleReadings.reading(1));
            log.note("Cold start.", "N. N.");
            log.append(SampleReadings.reading(2));
            log.voidEntry("r0001 ", "a lead was loose", "N. N.");
            List<LogEntry> entries = log.entries(LogQuery.everything());
            assertEquals(List.of("R0001", "N0001", "R0002", "V0001"), ids(entries));
            assertEquals(
                    List.of(1L, 2L, 3L, 4L),
                    entries.stream().map(LogEntry::sequence).toList());
            assertEquals(
                    Optional.of(new LogNote("Cold start.", "N. N.")),
                    entries.get(1).note());
        }
    }

    @Test
    void twoThatHaveTheFileOpenAddInTurnToOneChain() throws Exception {
        try (TestLog first = TestLog.open(file());
                TestLog second = TestLog.open(file())) {
            for (int number = 0; number < 6; number++) {
                addTwo(number % 3 == 0 ? first : second, number);
            }
            assertEquals(
                    List.of("R0001", "N0001", "R0002", "N0002", "R0003", "N0003", "R0004", "N0004", "R0005", "N0005"),
                    ids(first.entries(LogQuery.everything())).subList(0, 10));
            assertEquals(List.of(), second.verify().faults());
            assertEquals(12, second.verify().entriesChecked());
        }
    }

    private static void addTwo(TestLog log, int number) throws TestLogException {
        log.append(SampleReadings.reading(number));
        log.note("After " + number + ".", "");
    }

    @Test
    void aVoidedReadingStaysButDoesNotCount() throws Exception {
        try (TestLog log = TestLog.open(file())) {
            log.append(SampleReadings.reading(1));
            log.append(SampleReadings.reading(2));
            VoidNote why =
                    log.voidEntry("R0001", "a lead was loose", "N. N.").voids().orElseThrow();
            assertEquals("R0001", why.targetId());
            assertEquals("V0001", why.voidId());
            assertEquals("a lead was loose", why.reason());
            assertEquals(List.of("R0002"), ids(log.readings()));
            LogEntry voided = log.entry("R0001").orElseThrow();
            assertTrue(voided.voided());
            assertEquals(Optional.of(why), voided.voidedBy());
            assertTrue(log.verify().intact());
        }
    }

    @Test
    void voidingIsRefusedInSentences() throws Exception {
        try (TestLog log = TestLog.open(file())) {
            log.append(SampleReadings.reading(1));
            assertRefused("a reason is needed", () -> log.voidEntry("R0001", "  ", "N. N."));
            assertRefused("There is no entry R0007", () -> log.voidEntry("R0007", "wrong", ""));
            log.voidEntry("R0001", "wrong", "");
            assertRefused(
                    "was already voided by V0001, for this reason: wrong", () -> log.voidEntry("R0001", "again", ""));
            assertRefused("is a void itself", () -> log.voidEntry("V0001", "no", ""));
            assertRefused("A note needs a text", () -> log.note(" ", ""));
            assertEquals(2, log.entries(LogQuery.everything()).size());
        }
    }

    @Test
    void aTextThatNoFileCanHoldIsRefusedAndControlCharactersAreKept() throws Exception {
        String controls = "\u0001\u0000 \t\r\n\u000b\u007f\u0085\u2028\ufffe\uffff_x0041_";
        try (TestLog log = TestLog.open(file());
                TestLog other = TestLog.open(folder.resolve("other.db"))) {
            log.note("first", "");
            other.note("of another bench", "");
            String before = log.headHash();
            assertRefused("half of a character", () -> log.note("cut \ud83d", ""));
            assertRefused("half of a character", () -> log.note("text", "\udd0a"));
            assertRefused("half of a character", () -> log.voidEntry("N0001", "\ud83d", ""));
            assertRefused("half of a character", () -> log.join(other, "bench \ud83d", ""));
            assertEquals(before, log.headHash());
            assertEquals(1, log.chains().size());
            LogEntry note = log.note("whole \ud83d\udd0a" + controls, controls + ".");
            assertEquals(
                    "whole \ud83d\udd0a" + controls, note.note().orElseThrow().text());
            assertEquals(controls.strip() + ".", note.note().orElseThrow().who());
            assertTrue(log.verify().intact());
        }
        try (TestLog log = TestLog.openReadOnly(file())) {
            assertTrue(log.verify().intact());
            assertEquals(
                    "whole \ud83d\udd0a" + controls,
                    log.entry("N0002").orElseThrow().note().orElseThrow().text());
        }
    }

    private static void assertRefused(String sentence, Executable action) {
        TestLogException refused = assertThrows(TestLogException.class, action);
        assertTrue(refused.getMessage().contains(sentence), refused.getMessage());
        assertTrue(refused.getMessage().endsWith("."), refused.getMessage());
    }

    @Test
    void queriesSelect() throws Exception {
        Instant noon = Instant.parse("2026-03-02T12:00:00Z");
        try (TestLog log = TestLog.open(file(), Clock.fixed(noon.minusSeconds(1), ZoneOffset.UTC))) {
            log.append(SampleReadings.reading("s1", Mode.STEREO, "4ohm", 70));
            log.append(SampleReadings.reading("s2", Mode.STEREO, "2ohm", 110));
        }
        try (TestLog log = TestLog.open(file(), Clock.fixed(noon, ZoneOffset.UTC))) {
            log.append(SampleReadings.reading("s3", Mode.BRIDGED, "4ohm", 220));
            log.append(SampleReadings.reading("s1", Mode.STEREO, "4ohm", 71));
            log.note("Text", "");
            log.voidEntry("R0004", "wrong", "");
            LogQuery all = LogQuery.everything();
            assertEquals(List.of("R0001", "R0002", "R0004"), ids(log.entries(all.withMode(Mode.STEREO))));
            assertEquals(List.of("R0001", "R0003", "R0004"), ids(log.entries(all.withLoad("4ohm"))));
            assertEquals(List.of("R0001", "R0004"), ids(log.entries(all.withStep("s1"))));
            assertEquals(List.of("R0001"), ids(log.entries(all.withStep("s1").withVoided(false))));
            assertEquals(List.of("R0003", "R0004", "N0001", "V0001"), ids(log.entries(all.withSince(noon))));
            assertEquals(List.of("R0001", "R0002", "R0003"), ids(log.entries(LogQuery.validReadings())));
            LogQuery notes = new LogQuery(
                    Set.of(EntryKind.NOTE),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    true);
            assertEquals(List.of("N0001"), ids(log.entries(notes)));
        }
    }

    @Test
    void aLongLogIsHandedOverInOrderAndTheConsumerMayAdd() throws Exception {
        try (TestLog log = TestLog.open(file())) {
            for (int number = 1; number <= 600; number++) {
                log.append(SampleReadings.reading(number));
            }
            List<Long> seen = new ArrayList<>();
            log.forEach(LogQuery.everything(), entry -> {
                seen.add(entry.sequence());
                if (entry.sequence() == 300) {
                    addNote(log);
                }
            });
            assertEquals(IntStream.rangeClosed(1, 600).mapToObj(Long::valueOf).toList(), seen);
            assertEquals(601, log.verify().entriesChecked());
        }
    }

    private static void addNote(TestLog log) {
        try {
            log.note("Half way.", "");
        } catch (TestLogException failure) {
            throw new AssertionError(failure);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE entry SET body = '{}' WHERE seq = 1",
                "UPDATE entry SET hash = 'x'",
                "DELETE FROM entry WHERE seq = 1",
                "DELETE FROM entry",
                "INSERT OR REPLACE INTO entry VALUES (1, 'note', 'N0009', '', '{}', '', '')",
                "INSERT OR REPLACE INTO entry VALUES (3, 'note', 'R0001', '', '{}', '', '')",
                "INSERT INTO entry VALUES (9, 'note', 'N0009', '', '{}', '', '')",
                "INSERT INTO entry VALUES (NULL, 'note', 'N0009', '', '{}', '', '')",
            })
    void theFileItselfRefusesChanges(String sql) throws Exception {
        try (TestLog log = TestLog.open(file())) {
            log.append(SampleReadings.reading(1));
            log.append(SampleReadings.reading(2));
        }
        SQLException refused = assertThrows(SQLException.class, () -> RawLog.execute(file(), sql));
        assertTrue(refused.getMessage().contains("test log"), refused.getMessage());
        try (TestLog log = TestLog.openReadOnly(file())) {
            assertTrue(log.verify().intact());
            assertEquals(2, log.readings().size());
        }
    }

    @Test
    void theFileIsMarkedAndDurable() throws Exception {
        TestLog.open(file()).close();
        assertEquals("wal", RawLog.text(file(), "PRAGMA journal_mode"));
        assertEquals(String.valueOf(0x4F484D53), RawLog.text(file(), "PRAGMA application_id"));
        assertEquals("3", RawLog.text(file(), "PRAGMA user_version"));
        assertFalse(Files.exists(folder.resolve("log.db-wal")), "closing leaves one file");
    }

    @Test
    void aNewerSchemaIsRefused() throws Exception {
        TestLog.open(file()).close();
        RawLog.execute(file(), "PRAGMA user_version = 9");
        byte[] before = Files.readAllBytes(file());
        for (Executable open : openings()) {
            assertRefused("is of version 9, but this Ohmstead knows versions up to 3. Update Ohmstead", open);
        }
        assertArrayEquals(before, Files.readAllBytes(file()));
    }

    private List<Executable> openings() {
        return List.of(() -> TestLog.open(file()).close(), () -> TestLog.openReadOnly(file())
                .close());
    }

    @Test
    void anotherProgramsDatabaseIsRefused() throws Exception {
        RawLog.execute(file(), "CREATE TABLE other (x)");
        byte[] before = Files.readAllBytes(file());
        for (Executable open : openings()) {
            assertRefused("is a database of another program", open);
        }
        assertArrayEquals(before, Files.readAllBytes(file()));
    }

    @Test
    void aFileThatIsNoDatabaseIsRefusedAndNotTouched() throws Exception {
        Files.writeString(file(), "These are my notes, and not a database at all.\n".repeat(100));
        byte[] before = Files.readAllBytes(file());
        for (Executable open : openings()) {
            assertRefused("is not a test log", open);
        }
        assertArrayEquals(before, Files.readAllBytes(file()));
        try (var files = Files.list(folder)) {
            assertEquals(1, files.count());
        }
    }

    @Test
    void missingFilesAndFoldersAreSaidSo() throws Exception {
        assertRefused("There is no log", () -> TestLog.openReadOnly(file()).close());
        assertRefused(
                "does not exist",
                () -> TestLog.open(folder.resolve("none").resolve("log.db")).close());
        Files.createFile(file());
        assertRefused("is empty", () -> TestLog.openReadOnly(file()).close());
    }

    @Test
    void readingOnlyRefusesAdditions() throws Exception {
        TestLog.open(file()).close();
        try (TestLog log = TestLog.openReadOnly(file())) {
            assertRefused("is open for reading only", () -> log.append(SampleReadings.reading(1)));
        }
    }

    @Test
    void oddFolderNamesWork() throws Exception {
        Path odd = Files.createDirectory(folder.resolve("50% off? #1 \u00d7 \u03a9.ohmstead"));
        try (TestLog log = TestLog.open(odd.resolve("log.db"))) {
            log.append(SampleReadings.reading(1));
        }
        assertTrue(Files.size(odd.resolve("log.db")) > 0);
        try (TestLog log = TestLog.openReadOnly(odd.resolve("log.db"))) {
            assertEquals(1, log.readings().size());
        }
    }

    @Test
    void aFolderThatMayNotBeWrittenToIsSaidSoAndStillRead() throws Exception {
        assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"), "needs POSIX permissions");
        try (TestLog log = TestLog.open(file())) {
            log.append(SampleReadings.reading(1));
        }
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("r-xr-xr-x"));
        try {
            assumeFalse(Files.isWritable(folder), "this user may write everywhere");
            assertRefused("you may not write to it or its folder", () -> TestLog.open(file())
                    .close());
            try (TestLog log = TestLog.openReadOnly(file())) {
                assertEquals(1, log.readings().size());
                assertTrue(log.verify().intact());
            }
        } finally {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    /** One opening may see the new log in the middle of another's making it; it must not take it for somebody else's file. */
    @Test
    void firstOpeningsAtOnceAllSucceed() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            for (int round = 0; round < 60; round++) {
                Path file = folder.resolve("log" + round + ".db");
                CyclicBarrier start = new CyclicBarrier(4);
                Callable<Boolean> opening = () -> {
                    start.await();
                    try (TestLog log = TestLog.open(file)) {
                        return log.verify().intact();
                    }
                };
                for (Future<Boolean> opened : threads.invokeAll(Collections.nCopies(4, opening))) {
                    assertTrue(opened.get());
                }
            }
        } finally {
            threads.shutdownNow();
        }
    }
}
