// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Specimen;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** A log may be longer than the workbench holds: the newest entries count, and of joined logs those about the same amplifier. */
class NewestEntriesTest extends DeskStage {
    private static final WorkProgress SILENT = new WorkProgress() {
        @Override
        public void step(int done, int total, String what) {
            // Nobody looks.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    @TempDir
    Path otherFolder;

    private Path logFile;

    @BeforeEach
    void place() {
        logFile = folder.resolve(TestLog.FILE_NAME);
    }

    private static List<String> ids(LogSnapshot log) {
        return log.entries().stream().map(LogEntry::id).toList();
    }

    /** Four readings, of which the second is voided, then another two. */
    private void sevenEntries() throws TestLogException {
        SampleLog.append(folder, 4);
        try (TestLog log = TestLog.open(logFile)) {
            log.voidEntry("R0002", "load lead was loose", "N. N.");
        }
        SampleLog.append(folder, 2);
    }

    @Test
    void theNewestAreHeldWithWhatBecameOfThem() throws Exception {
        sevenEntries();
        LogSnapshot log = LogReader.readAtMost(6, logFile, "", SILENT);
        assertEquals(List.of("R0002", "R0003", "R0004", "V0001", "R0005", "R0006"), ids(log));
        assertTrue(log.entries().get(0).voided());
        assertEquals(
                "load lead was loose",
                log.entries().get(0).voidedBy().orElseThrow().reason());
        assertFalse(log.entries().get(1).voided());
        assertEquals(1, log.older());
        assertFalse(log.complete());
        assertEquals(7, log.total());
        assertEquals("7 entries, chain whole", log.sentence());
    }

    @Test
    void aShortLogIsHeldWhole() throws Exception {
        sevenEntries();
        LogSnapshot log = LogReader.read(logFile, SILENT);
        assertEquals(7, log.entries().size());
        assertTrue(log.complete());
        try (TestLog opened = TestLog.openReadOnly(logFile)) {
            assertEquals(opened.entries(LogQuery.everything()), log.entries());
        }
    }

    @Test
    void readingFromTheEndGivesWhatReadingFromTheBeginningGives() throws Exception {
        sevenEntries();
        try (TestLog log = TestLog.openReadOnly(logFile)) {
            assertEquals(
                    log.entries(LogQuery.everything()),
                    NewestEntries.read(log.rows(), "the log", "", List.of(), 100)
                            .entries());
        }
    }

    @Test
    void entriesThatStayedAreNotMadeAnewButVoidedOnesAre() throws Exception {
        SampleLog.append(folder, 3);
        try (TestLog log = TestLog.open(logFile)) {
            List<LogEntry> before = NewestEntries.read(log.rows(), "the log", "", List.of(), 100)
                    .entries();
            log.voidEntry("R0002", "load lead was loose", "N. N.");
            List<LogEntry> after =
                    NewestEntries.read(log.rows(), "the log", "", before, 100).entries();
            assertSame(before.get(0), after.get(0));
            assertTrue(after.get(1).voided());
        }
    }

    @Test
    void ofAJoinedLogOnlyWhatIsAboutTheSameAmplifierIsHeld() throws Exception {
        SampleLog.append(folder, 1);
        try (TestLog log = TestLog.open(logFile);
                TestLog other = TestLog.open(otherFolder.resolve(TestLog.FILE_NAME))) {
            other.append(SampleLog.about(Optional.of(new Specimen("Larkspur 2", "1", "North"))));
            other.append(SampleLog.about(Optional.of(new Specimen("Thistle 9", "7", "North"))));
            other.append(SampleLog.about(Optional.empty()));
            log.join(other, "North bench", "N. N.");
        }
        LogSnapshot log = LogReader.read(logFile, "larkspur 2", List.of(), SILENT);
        assertEquals(List.of("R0001", "B/R0001", "B/R0003", "J0001"), ids(log));
        assertEquals(1, log.others());
        assertEquals(0, log.older());
        assertEquals(5, log.total());
    }

    @Test
    void anEntryThatIsNotHeldIsFoundAllTheSame() throws Exception {
        SampleLog.append(folder, 1);
        try (TestLog log = TestLog.open(logFile);
                TestLog other = TestLog.open(otherFolder.resolve(TestLog.FILE_NAME))) {
            other.append(SampleLog.about(Optional.of(new Specimen("Thistle 9", "7", "North"))));
            log.join(other, "North bench", "N. N.");
        }
        open();
        assertEquals(Optional.empty(), desk.log().entry("B/R0001"));
        List<Optional<LogEntry>> found = new ArrayList<>();
        desk.findEntry("B/R0001", found::add, failures::add);
        desk.findEntry("R0001", found::add, failures::add);
        desk.findEntry("R0099", found::add, failures::add);
        assertEquals("B/R0001", found.get(0).orElseThrow().id());
        assertEquals("R0001", found.get(1).orElseThrow().id());
        assertEquals(Optional.empty(), found.get(2));
        // It stays the chosen one when the log is read anew.
        desk.choose(found.get(0));
        SampleLog.append(folder, 1);
        desk.refreshLog();
        assertEquals("B/R0001", desk.chosenEntry().orElseThrow().id());
    }

    @Test
    void whatIsLeftOutIsAProblemToKnowOf() throws Exception {
        sevenEntries();
        open();
        LogSnapshot log = LogReader.readAtMost(5, logFile, "", SILENT);
        ProjectSession session = desk.session().orElseThrow();
        List<Problem> problems = new LogProblems()
                .problems(
                        new ProjectView(session.folder(), session.project(), List.of(), log, LocalDate.of(2026, 3, 2)));
        assertEquals(1, problems.size());
        assertEquals(Severity.NOTE, problems.get(0).severity());
        assertTrue(
                problems.get(0).toString().contains("2 older ones are left out"),
                problems.get(0).toString());
    }

    @Test
    void aClockThatWentBackIsSaidWhileItIsNews() throws Exception {
        Files.deleteIfExists(logFile);
        FutureLog.write(logFile);
        LogSnapshot before = LogReader.readAtMost(50, logFile, "", SILENT);
        assertEquals("", before.clock());
        SampleLog.append(folder, 1);
        open();
        ProjectSession session = desk.session().orElseThrow();
        LogSnapshot log = LogReader.readAtMost(50, logFile, "", SILENT);
        List<Problem> problems = new LogProblems()
                .problems(
                        new ProjectView(session.folder(), session.project(), List.of(), log, LocalDate.of(2026, 3, 2)));
        assertEquals(1, problems.size());
        assertEquals(Severity.NOTE, problems.get(0).severity());
        assertTrue(problems.get(0).what().contains("clock was set back"), problems.toString());
        SampleLog.append(folder, 9);
        assertFalse(LogReader.readAtMost(50, logFile, "", SILENT).clock().isEmpty());
        SampleLog.append(folder, 1);
        assertEquals("", LogReader.readAtMost(50, logFile, "", SILENT).clock());
    }
}
