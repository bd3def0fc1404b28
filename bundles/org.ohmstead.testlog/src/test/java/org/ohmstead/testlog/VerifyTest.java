// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.testlog.VerifyFault.Kind;

class VerifyTest {
    @TempDir
    Path folder;

    private Path file;
    private String head;

    @BeforeEach
    void makeALog() throws Exception {
        file = folder.resolve(TestLog.FILE_NAME);
        try (TestLog log = TestLog.open(file)) {
            log.append(SampleReadings.reading(1));
            log.append(SampleReadings.reading(2));
            log.note("Fan on.", "N. N.");
            log.voidEntry("R0002", "a lead was loose", "N. N.");
            log.append(SampleReadings.reading(3));
            head = log.headHash();
        }
    }

    private VerifyReport verify(Optional<String> expectedHead) throws TestLogException {
        try (TestLog log = TestLog.openReadOnly(file)) {
            return log.verify(expectedHead);
        }
    }

    private static List<Kind> kinds(VerifyReport report) {
        return report.faults().stream().map(VerifyFault::kind).toList();
    }

    @Test
    void anUntouchedLogIsIntact() throws Exception {
        VerifyReport report = verify(Optional.of(head));
        assertEquals(List.of(), report.faults());
        assertTrue(report.intact());
        assertEquals(5, report.entriesChecked());
        assertEquals(head, report.headHash());
    }

    @Test
    void anOlderHeadIsFoundInALogThatGrew() throws Exception {
        try (TestLog log = TestLog.open(file)) {
            log.append(SampleReadings.reading(4));
        }
        assertTrue(verify(Optional.of(head.toUpperCase(Locale.ROOT))).intact());
        assertTrue(verify(Optional.of(TestLog.FIRST_PREVIOUS_HASH)).intact());
    }

    @Test
    void anExpectedHeadThatIsNoHashIsRefused() {
        TestLogException refused = assertThrows(TestLogException.class, () -> verify(Optional.of("abc")));
        assertTrue(refused.getMessage().contains("is not a hash"), refused.getMessage());
    }

    // The definition, worked out here without the log's own code.
    @Test
    void theChainIsTheOneThatIsDocumented() throws Exception {
        try (TestLog log = TestLog.openReadOnly(file)) {
            String previous = "0".repeat(64);
            for (LogEntry entry : log.entries(LogQuery.everything())) {
                String text = previous + "\n" + entry.sequence() + "\n"
                        + entry.kind().word() + "\n" + entry.id() + "\n" + entry.recordedAt() + "\n" + entry.bodyText();
                byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
                previous = HexFormat.of().formatHex(digest);
                assertEquals(previous, entry.hash());
            }
            assertEquals(previous, head);
        }
    }

    @Test
    void theUsualCommandLineToolsGiveTheSameHash() throws Exception {
        assumeTrue(isThere("sqlite3") && isThere("sha256sum") && isThere("sh"), "needs sqlite3, sha256sum and sh");
        for (int sequence = 1; sequence <= 5; sequence++) {
            String query =
                    "SELECT previous_hash || char(10) || seq || char(10) || kind || char(10) || entry_id || char(10)"
                            + " || recorded_at || char(10) || body FROM entry WHERE seq = " + sequence;
            Process process = new ProcessBuilder(
                            "sh", "-c", "printf %s \"$(sqlite3 \"$0\" \"$1\")\" | sha256sum", file.toString(), query)
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            String printed = process.inputReader(StandardCharsets.UTF_8).readLine();
            assertTrue(process.waitFor(60, TimeUnit.SECONDS));
            assertEquals(RawLog.text(file, "SELECT hash FROM entry WHERE seq = " + sequence), printed.substring(0, 64));
        }
    }

    private static boolean isThere(String program) {
        return Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
                .anyMatch(place -> Files.isExecutable(Path.of(place, program)));
    }

    // Every column of the first, a middle and the last entry: what is set, and the fault that must be among those found
    // for it.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "seq = 9|5|CONTENT_CHANGED",
                "seq = 0|1|CONTENT_CHANGED",
                "kind = 'note'|1|CONTENT_CHANGED",
                "kind = 'reading'|3|CONTENT_CHANGED",
                "kind = 'secret'|5|UNREADABLE",
                "entry_id = 'R0009'|1|CONTENT_CHANGED",
                "entry_id = 'N0009'|3|CONTENT_CHANGED",
                "entry_id = 'R0009'|5|CONTENT_CHANGED",
                "recorded_at = '2020-01-01T00:00:00Z'|1|CONTENT_CHANGED",
                "recorded_at = '2020-01-01T00:00:00Z'|3|CONTENT_CHANGED",
                "recorded_at = 'yesterday'|5|UNREADABLE",
                "body = replace(body, '71.5', '91.5')|1|CONTENT_CHANGED",
                "body = replace(body, 'Fan on.', 'Fan of.')|3|CONTENT_CHANGED",
                "body = replace(body, 'R0002', 'R0001')|4|CONTENT_CHANGED",
                "body = printf('%s ', body)|5|CONTENT_CHANGED",
                "body = ''|5|UNREADABLE",
                "body = '{'|4|UNREADABLE",
                "previous_hash = hash|1|CHAIN_BROKEN",
                "previous_hash = hash|3|CHAIN_BROKEN",
                "previous_hash = ''|5|CHAIN_BROKEN",
                "hash = previous_hash|1|CONTENT_CHANGED",
                "hash = upper(hash)|3|CONTENT_CHANGED",
                "hash = ''|5|CONTENT_CHANGED",
            })
    void aChangeOfAnyColumnIsFound(String change, int sequence, Kind kind) throws Exception {
        RawLog.dropTriggers(file);
        RawLog.execute(file, "UPDATE entry SET " + change + " WHERE seq = " + sequence);
        long now = change.startsWith("seq = ") ? Long.parseLong(change.substring(6)) : sequence;
        VerifyReport report = verify(Optional.empty());
        assertTrue(
                report.faults().stream().anyMatch(fault -> fault.kind() == kind && fault.sequence() == now),
                report.faults().toString());
        assertTrue(report.faults().stream().allMatch(fault -> fault.sentence().endsWith(".")));
        listsOrFailsInASentence();
    }

    private void listsOrFailsInASentence() {
        try (TestLog log = TestLog.openReadOnly(file)) {
            log.forEach(LogQuery.everything(), entry -> assertFalse(entry.id().isEmpty()));
        } catch (TestLogException failure) {
            assertTrue(failure.getMessage().endsWith("."), failure.getMessage());
        }
    }

    @Test
    void aChangeWithItsHashMadeToFitIsFoundByTheNextEntry() throws Exception {
        RawLog.dropTriggers(file);
        try (TestLog log = TestLog.openReadOnly(file)) {
            LogEntry entry = log.entry("N0001").orElseThrow();
            String body = entry.bodyText().replace("Fan on.", "Fan of.");
            String text = entry.previousHash() + "\n" + entry.sequence() + "\nnote\nN0001\n" + entry.recordedAt() + "\n"
                    + body;
            String hash = HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
            RawLog.execute(file, "UPDATE entry SET body = '" + body + "', hash = '" + hash + "' WHERE seq = 3");
        }
        VerifyReport report = verify(Optional.empty());
        assertEquals(
                List.of(Kind.GUARDS_CHANGED, Kind.GUARDS_CHANGED, Kind.GUARDS_CHANGED, Kind.CHAIN_BROKEN),
                kinds(report));
        assertEquals("V0001", report.faults().get(3).entryId());
    }

    @Test
    void aDeletedEntryInTheMiddleIsFound() throws Exception {
        RawLog.dropTriggers(file);
        RawLog.execute(file, "DELETE FROM entry WHERE seq = 3");
        VerifyReport report = verify(Optional.empty());
        assertTrue(kinds(report).containsAll(List.of(Kind.ENTRY_MISSING, Kind.CHAIN_BROKEN)), report.toString());
        assertEquals(4, report.entriesChecked());
    }

    @Test
    void entriesSwappedOrRenumberedAreFound() throws Exception {
        RawLog.dropTriggers(file);
        RawLog.execute(file, "DELETE FROM entry WHERE seq = 3", "UPDATE entry SET seq = seq - 1 WHERE seq > 3");
        List<Kind> kinds = kinds(verify(Optional.empty()));
        assertTrue(kinds.containsAll(List.of(Kind.CONTENT_CHANGED, Kind.CHAIN_BROKEN)), kinds.toString());
    }

    @Test
    void entriesCutOffAtTheEndAreFoundByTheExpectedHead() throws Exception {
        String triggers = RawLog.text(
                file,
                "SELECT group_concat(sql, ';;') FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'entry'");
        RawLog.dropTriggers(file);
        RawLog.execute(file, "DELETE FROM entry WHERE seq = 5");
        RawLog.execute(file, triggers.split(";;"));
        assertTrue(verify(Optional.empty()).intact(), "the log alone cannot know");
        VerifyReport report = verify(Optional.of(head));
        assertEquals(List.of(Kind.HEAD_NOT_FOUND), kinds(report));
        assertTrue(report.faults().get(0).sentence().contains("cut off at the end"), report.toString());
    }

    @Test
    void missingChangedAndForeignTriggersAreFound() throws Exception {
        RawLog.execute(
                file,
                "DROP TRIGGER entry_is_never_deleted",
                "DROP TRIGGER entry_is_never_changed",
                "CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry BEGIN SELECT 1; END",
                "CREATE TRIGGER extra AFTER INSERT ON entry BEGIN SELECT 1; END");
        VerifyReport report = verify(Optional.empty());
        assertEquals(List.of(Kind.GUARDS_CHANGED, Kind.GUARDS_CHANGED, Kind.GUARDS_CHANGED), kinds(report));
    }

    @Test
    void voidsOfNothingAreFound() throws Exception {
        for (String target : List.of("R0009", "V0001", "R0002")) {
            appendVoidBehindTheLogsBack(target);
        }
        List<Kind> kinds = kinds(verify(Optional.empty()));
        assertEquals(List.of(Kind.VOID_WITHOUT_TARGET, Kind.VOID_WITHOUT_TARGET, Kind.VOID_WITHOUT_TARGET), kinds);
    }

    private void appendVoidBehindTheLogsBack(String target) throws Exception {
        long sequence = 1 + Long.parseLong(RawLog.text(file, "SELECT max(seq) FROM entry"));
        String previous = RawLog.text(file, "SELECT hash FROM entry ORDER BY seq DESC LIMIT 1");
        String id = "V00" + (10 + sequence);
        String body = "{\"entryId\":\"" + target + "\",\"reason\":\"x\",\"who\":\"\"}";
        String text = previous + "\n" + sequence + "\nvoid\n" + id + "\n2026-03-02T09:14:05Z\n" + body;
        String hash = HexFormat.of()
                .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        RawLog.execute(
                file,
                "INSERT INTO entry VALUES (" + sequence + ", 'void', '" + id + "', '2026-03-02T09:14:05Z', '" + body
                        + "', '" + previous + "', '" + hash + "')");
    }

    @Test
    void oneByteChangedInTheFileIsFound() throws Exception {
        changeInFile("\"powerWatts\":71.5", "\"powerWatts\":".length(), '9');
        VerifyReport report = verify(Optional.empty());
        assertEquals(List.of(Kind.CONTENT_CHANGED), kinds(report));
        assertEquals("R0001", report.faults().get(0).entryId());
        assertEquals(
                "The entry R0001, number 1 of the log, was changed: its number, kind, id, time or content does not give its"
                        + " hash.",
                report.faults().get(0).sentence());
        try (TestLog log = TestLog.openReadOnly(file)) {
            assertEquals(
                    91.5,
                    log.readings()
                            .get(0)
                            .reading()
                            .orElseThrow()
                            .channels()
                            .get(0)
                            .powerWatts());
        }
    }

    @Test
    void aReadingThatCannotBeReadIsListedButNotCountedOn() throws Exception {
        changeInFile("\"powerWatts\":71.5", 0, 'x');
        assertEquals(List.of(Kind.CONTENT_CHANGED, Kind.UNREADABLE), kinds(verify(Optional.empty())));
        try (TestLog log = TestLog.openReadOnly(file)) {
            assertFalse(log.entries(LogQuery.everything()).get(0).readable());
            TestLogException refused = assertThrows(TestLogException.class, log::readings);
            assertTrue(refused.getMessage().contains("The reading R0001"), refused.getMessage());
        }
    }

    // SQLite leaves old copies of moved entries in free space, so every occurrence is changed.
    private void changeInFile(String wanted, int offset, char replacement) throws IOException {
        byte[] content = Files.readAllBytes(file);
        byte[] bytes = wanted.getBytes(StandardCharsets.UTF_8);
        int found = 0;
        for (int at = 0; at <= content.length - bytes.length; at++) {
            if (Arrays.equals(content, at, at + bytes.length, bytes, 0, bytes.length)) {
                content[at + offset] = (byte) replacement;
                found++;
            }
        }
        assertTrue(found > 0, "the text is not in the file");
        Files.write(file, content);
    }

    @Test
    void anyDamageOfTheFileEndsInAReportOrASentence() throws IOException {
        byte[] content = Files.readAllBytes(file);
        int caught = 0;
        for (int at = 100; at < content.length; at += 293) {
            byte[] damaged = content.clone();
            Arrays.fill(damaged, at, Math.min(at + 64, damaged.length), (byte) 0xA5);
            Files.write(file, damaged);
            if (isCaught()) {
                caught++;
            }
        }
        assertTrue(caught > 15, "damages caught: " + caught);
    }

    @Test
    void aFileCutShortEndsInAReportOrASentence() throws IOException {
        byte[] content = Files.readAllBytes(file);
        for (int length = 20; length < content.length; length += 1021) {
            Files.write(file, Arrays.copyOf(content, length));
            assertTrue(isCaught(), "length " + length);
        }
    }

    private boolean isCaught() {
        try {
            boolean intact = verify(Optional.of(head)).intact();
            listsOrFailsInASentence();
            return !intact;
        } catch (TestLogException failure) {
            assertTrue(failure.getMessage().endsWith("."), failure.getMessage());
            return true;
        }
    }
}
