// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.workbench.session.SampleFolder.titled;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.json.RecoveryFile;

class RecoveryTest {
    @TempDir
    Path parent;

    private final HandClock clock = new HandClock();
    private final HandAlarm alarm = new HandAlarm(clock);
    private final ProjectDesk desk =
            new ProjectDesk(new HandWork(), clock, alarm, new ProblemCollector(Duration.ofSeconds(10)));
    private Path folder;
    private Path copy;

    @BeforeEach
    void open() throws IOException {
        folder = SampleFolder.copyInto(parent);
        copy = folder.resolve(RecoveryFile.FILE_NAME);
        reopen();
    }

    private ProjectSession reopen() {
        List<Exception> failures = new ArrayList<>();
        desk.open(folder, Unsaved.DISCARD, session -> {}, failures::add);
        assertEquals(List.of(), failures);
        return desk.session().orElseThrow();
    }

    private ProjectSession session() {
        return desk.session().orElseThrow();
    }

    /** Ends as a crash does: the lock goes, and nothing else is done. */
    private void crash() throws Exception {
        byte[] left = Files.readAllBytes(copy);
        desk.close(Unsaved.DISCARD);
        Files.write(copy, left);
    }

    @AfterEach
    void close() throws UnsavedEdits {
        desk.close(Unsaved.DISCARD);
    }

    @Test
    void isWrittenOneSecondAfterTheFirstEditAndThenEveryFive() throws Exception {
        session().edit("One", titled("One"));
        alarm.advance(Duration.ofMillis(999));
        assertFalse(Files.exists(copy));
        alarm.advance(Duration.ofMillis(1));
        assertEquals("One", RecoveryFile.read(copy).project().title());
        session().edit("Two", titled("Two"));
        alarm.advance(Duration.ofMillis(4999));
        assertEquals("One", RecoveryFile.read(copy).project().title());
        session().edit("Three", titled("Three"));
        alarm.advance(Duration.ofMillis(1));
        assertEquals("Three", RecoveryFile.read(copy).project().title());
        assertEquals(List.of("One", "Two", "Three"), RecoveryFile.read(copy).editNames());
        assertEquals(session().revisionSha256(), RecoveryFile.read(copy).baseRevision());
    }

    @Test
    void aClockThatIsSetBackDoesNotKeepItWaiting() throws Exception {
        session().edit("One", titled("One"));
        alarm.advance(Duration.ofSeconds(1));
        clock.advance(Duration.ofHours(-30));
        session().edit("Two", titled("Two"));
        alarm.advance(Duration.ofSeconds(1));
        assertEquals("Two", RecoveryFile.read(copy).project().title());
    }

    @Test
    void goesWithASaveAnUndoToTheSavedStateAndAClose() throws Exception {
        for (Runnable end : List.<Runnable>of(this::saveNow, () -> session().undo(), this::closeAndReopen)) {
            session().edit("Edit", titled("Edit " + end.hashCode()));
            alarm.advance(Duration.ofSeconds(6));
            assertTrue(Files.exists(copy));
            end.run();
            alarm.advance(Duration.ofSeconds(6));
            assertFalse(Files.exists(copy));
            assertEquals(Optional.empty(), session().recovery());
        }
    }

    private void saveNow() {
        List<Exception> failures = new ArrayList<>();
        desk.save(() -> {}, failures::add);
        assertEquals(List.of(), failures);
    }

    private void closeAndReopen() {
        try {
            desk.close(Unsaved.DISCARD);
        } catch (UnsavedEdits impossible) {
            throw new AssertionError(impossible);
        }
        reopen();
    }

    @Test
    void aWritingUnderWayWhenAllIsSavedLeavesNothing() throws Exception {
        session().edit("One", titled("One"));
        alarm.hold();
        alarm.advance(Duration.ofSeconds(1));
        session().save();
        alarm.letGo();
        assertFalse(Files.exists(copy));
    }

    @Test
    void recoversAsOneEditThatCanBeUndone() throws Exception {
        String first = session().project().title();
        session().edit("One", titled("One"));
        session().edit("Two", titled("Two"));
        alarm.advance(Duration.ofSeconds(1));
        crash();
        alarm.advance(Duration.ofMinutes(10));
        ProjectSession again = reopen();
        assertEquals(first, again.project().title());
        assertFalse(again.dirty());
        Recovery recovery = again.recovery().orElseThrow();
        assertEquals(2, recovery.editCount());
        assertEquals(List.of("One", "Two"), recovery.editNames());
        assertFalse(recovery.projectChangedSince());
        assertEquals(
                "2 edits were not saved when Ohmstead ended: a copy of 14:05 is there (last: Two).",
                recovery.sentence());
        assertEquals(recovery.sentence(), again.notices().get(0).sentence());
        recovery.recover();
        assertEquals("Two", again.project().title());
        assertTrue(again.dirty());
        assertEquals(Optional.of("Recover unsaved edits of 14:05"), again.undoName());
        assertEquals(Optional.empty(), again.recovery());
        assertThrows(IllegalStateException.class, recovery::recover);
        again.undo();
        assertEquals(first, again.project().title());
        again.redo();
        again.save();
        assertEquals(List.of(".lock", "project.json"), SampleFolder.namesIn(folder));
    }

    @Test
    void aRecoveredCopyStaysUntilItsEditsAreSafeAgain() throws Exception {
        session().edit("One", titled("One"));
        alarm.advance(Duration.ofSeconds(1));
        crash();
        reopen().recovery().orElseThrow().recover();
        assertEquals(1, RecoveryFile.list(folder).size());
        assertFalse(Files.exists(copy));
        alarm.advance(Duration.ofSeconds(1));
        assertEquals(List.of(copy), RecoveryFile.list(folder));
    }

    @Test
    void saysWhenTheProjectWasChangedSince() throws Exception {
        session().edit("One", titled("One"));
        alarm.advance(Duration.ofSeconds(1));
        crash();
        SampleFolder.editOutside(folder, "Theirs");
        alarm.advance(Duration.ofDays(1));
        Recovery recovery = reopen().recovery().orElseThrow();
        assertTrue(recovery.projectChangedSince());
        assertTrue(recovery.sentence().contains("changed after that"), recovery.sentence());
        assertTrue(recovery.sentence().contains("2026-04-01 14:05"), recovery.sentence());
    }

    @Test
    void isDiscardedOnlyWhenTold() throws Exception {
        session().edit("One", titled("One"));
        alarm.advance(Duration.ofSeconds(1));
        crash();
        ProjectSession undecided = reopen();
        undecided.edit("Other", titled("Other"));
        alarm.advance(Duration.ofSeconds(6));
        undecided.save();
        desk.close(Unsaved.REFUSE);
        ProjectSession again = reopen();
        assertEquals("One", again.recovery().orElseThrow().project().title());
        assertTrue(again.recovery().orElseThrow().projectChangedSince());
        again.recovery().orElseThrow().discard();
        assertEquals(Optional.empty(), again.recovery());
        assertEquals(List.of(), RecoveryFile.list(folder));
    }

    @Test
    void twoCrashesLeaveTwoCopiesTheNewestFirst() throws Exception {
        session().edit("One", titled("One"));
        alarm.advance(Duration.ofSeconds(1));
        crash();
        reopen().edit("Two", titled("Two"));
        alarm.advance(Duration.ofSeconds(1));
        crash();
        ProjectSession again = reopen();
        Recovery newest = again.recovery().orElseThrow();
        assertEquals("Two", newest.project().title());
        newest.discard();
        assertEquals("One", again.recovery().orElseThrow().project().title());
    }

    @Test
    void aCopyThatHoldsNothingNewIsNotOffered() throws Exception {
        session().edit("One", titled("One"));
        alarm.advance(Duration.ofSeconds(1));
        crash();
        SampleFolder.editOutside(folder, "One");
        assertEquals(Optional.empty(), reopen().recovery());
        assertEquals(List.of(), RecoveryFile.list(folder));
    }

    @Test
    void anUnreadableCopyIsKeptAsideAndTold() throws Exception {
        desk.close(Unsaved.DISCARD);
        Files.writeString(copy, "{\"formatVersion\": 1, \"made");
        ProjectSession again = reopen();
        assertEquals(Optional.empty(), again.recovery());
        SessionNotice notice = again.notices().get(0);
        assertEquals(SessionNotice.Kind.RECOVERY_BROKEN, notice.kind());
        assertTrue(notice.sentence().contains(".unsaved-edits.json.broken"), notice.sentence());
        assertEquals("{\"formatVersion\": 1, \"made", Files.readString(folder.resolve(".unsaved-edits.json.broken")));
        assertFalse(Files.exists(copy));
    }

    @Test
    void anEndingDeskKeepsUnsavedEditsForTheNextTime() throws Exception {
        session().edit("One", titled("One"));
        desk.dispose();
        ProjectSession again = ProjectSession.open(folder, clock);
        assertEquals("One", again.recovery().orElseThrow().project().title());
        again.close(false);
    }

    @Test
    void aCopyThatCannotBeWrittenIsToldOnce() throws Exception {
        Files.createDirectory(copy);
        List<SessionNotice> told = new ArrayList<>();
        desk.listen(new DeskListener() {
            @Override
            public void noticed(SessionNotice notice) {
                told.add(notice);
            }
        });
        session().edit("One", titled("One"));
        alarm.advance(Duration.ofSeconds(6));
        session().edit("Two", titled("Two"));
        alarm.advance(Duration.ofSeconds(6));
        assertEquals(
                List.of(SessionNotice.Kind.RECOVERY_FAILED),
                told.stream().map(SessionNotice::kind).toList());
        Files.delete(copy);
        session().edit("Three", titled("Three"));
        alarm.advance(Duration.ofSeconds(6));
        assertEquals("Three", RecoveryFile.read(copy).project().title());
    }
}
