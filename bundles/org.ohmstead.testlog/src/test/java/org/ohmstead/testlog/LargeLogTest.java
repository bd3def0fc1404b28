// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.VerifyFault.Kind;

/** A log so large that its file is checked beside its entries, and its lists in their order. */
class LargeLogTest {
    private static final int ENTRIES = 22_000;

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void makeALargeLog() throws Exception {
        file = folder.resolve(TestLog.FILE_NAME);
        LogGenerator.write(file, ENTRIES);
        assertTrue(Files.size(file) > 1 << 25, "bytes: " + Files.size(file));
    }

    private VerifyReport verify() throws TestLogException {
        try (TestLog log = TestLog.openReadOnly(file)) {
            return log.verify();
        }
    }

    @Test
    void anUntouchedOneIsIntactAndSoIsOneWithAJoinedChain() throws Exception {
        assertEquals(List.of(), verify().faults());
        assertEquals(ENTRIES, verify().entriesChecked());
        try (TestLog log = TestLog.open(file);
                TestLog other = TestLog.open(folder.resolve("other.db"))) {
            other.note("Second bench.", "");
            log.join(other, "Second bench", "");
            assertEquals(List.of(), log.verify().faults());
        }
    }

    // An entry's id stands in the entry, where its time follows, in a void of it, and once more in the list that it is
    // found by.
    @Test
    void aListOfIdsThatDoesNotAgreeWithTheEntriesIsFound() throws Exception {
        byte[] content = Files.readAllBytes(file);
        String letters = new String(content, StandardCharsets.ISO_8859_1);
        int changed = 0;
        for (int at = letters.indexOf("R15000"); at >= 0; at = letters.indexOf("R15000", at + 1)) {
            String behind = letters.substring(at + 6, Math.min(at + 16, letters.length()));
            if (!behind.matches("(?s)(20[0-9]{2}-|\"|:).*")) {
                content[at + 5] ^= 1;
                changed++;
            }
        }
        assertEquals(1, changed);
        assertListFault(content, "list of ids");
    }

    // The word of a kind stands in an entry before its id, and in the list of kinds before the entry's number.
    @Test
    void aListOfKindsThatDoesNotAgreeWithTheEntriesIsFound() throws Exception {
        byte[] content = Files.readAllBytes(file);
        String letters = new String(content, StandardCharsets.ISO_8859_1);
        int changed = 0;
        for (int at = letters.indexOf("void"); at >= 0; at = letters.indexOf("void", at + 1)) {
            String behind = letters.substring(at + 4, Math.min(at + 16, letters.length()));
            String before = letters.substring(at - 3, at);
            // A cell of the list: its header of three bytes says a text of four letters and a number.
            if (before.charAt(0) == 3 && before.charAt(1) == 21 && !behind.startsWith("V")) {
                content[at + 3] ^= 1;
                changed++;
            }
        }
        // Some are copies that the database has left in free places.
        assertTrue(changed > 100, "changed: " + changed);
        assertListFault(content, "list of kinds");
    }

    private void assertListFault(byte[] content, String list) throws Exception {
        Files.write(file, content);
        List<VerifyFault> faults = verify().faults();
        assertEquals(
                List.of(Kind.FILE_DAMAGED),
                faults.stream().map(VerifyFault::kind).toList());
        assertTrue(faults.get(0).sentence().contains(list), faults.toString());
    }

    @Test
    void aChangedEntryIsNamedAsInASmallLog() throws Exception {
        RawLog.dropTriggers(file);
        RawLog.execute(file, "UPDATE entry SET recorded_at = '2020-01-01T00:00:00Z' WHERE seq = 12345");
        VerifyReport report = verify();
        VerifyFault fault = report.faults().stream()
                .filter(each -> each.sequence() > 0)
                .findFirst()
                .orElseThrow();
        assertEquals(12345, fault.sequence());
        assertEquals(Kind.CONTENT_CHANGED, fault.kind());
        assertEquals(ENTRIES, report.entriesChecked());
    }
}
