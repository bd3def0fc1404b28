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
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.model.json.ProjectRevision;

class ProjectSessionTest {
    @TempDir
    Path parent;

    private final HandClock clock = new HandClock();
    private Path folder;
    private ProjectSession session;

    @BeforeEach
    void open() throws IOException, SessionException {
        folder = SampleFolder.copyInto(parent);
        session = ProjectSession.open(folder, clock);
    }

    @AfterEach
    void close() throws SessionException {
        session.close(false);
    }

    private String title() {
        return session.project().title();
    }

    @Test
    void opensCleanAndWritable() throws Exception {
        assertFalse(session.readOnly());
        assertFalse(session.dirty());
        assertEquals(Optional.empty(), session.undoName());
        assertEquals(List.of(), session.notices());
        assertEquals(ProjectFile.read(folder).project(), session.project());
        assertEquals(ProjectRevision.of(session.project()), session.revisionSha256());
        assertEquals(folder.toAbsolutePath().normalize(), session.folder());
        assertEquals(folder.resolve("log.db"), session.logFile());
        assertEquals(folder.resolve("sheets"), session.sheetsFolder());
        assertEquals(folder.resolve("captures"), session.capturesFolder());
    }

    @Test
    void opensByTheFileAsWell() throws Exception {
        session.close(false);
        session = ProjectSession.open(folder.resolve("project.json"), clock);
        assertEquals(folder.toAbsolutePath().normalize(), session.folder());
        assertFalse(session.readOnly());
    }

    @Test
    void editsUndoAndRedoWithNames() {
        String first = title();
        session.edit("Name it", titled("One"));
        session.edit("Name it anew", titled("Two"));
        assertEquals(Optional.of("Name it anew"), session.undoName());
        session.undo();
        assertEquals("One", title());
        assertEquals(Optional.of("Name it"), session.undoName());
        assertEquals(Optional.of("Name it anew"), session.redoName());
        session.undo();
        assertEquals(first, title());
        assertFalse(session.dirty(), "back at the saved state");
        session.redo();
        session.redo();
        assertEquals("Two", title());
        assertTrue(session.dirty());
        session.undo();
        session.edit("Name it otherwise", titled("Three"));
        assertEquals(Optional.empty(), session.redoName(), "an edit forgets what was undone");
    }

    @Test
    void anEditWithoutEffectIsNoStep() {
        session.edit("Nothing", project -> project);
        session.edit("Same title", titled(title()));
        assertEquals(Optional.empty(), session.undoName());
        assertFalse(session.dirty());
    }

    @Test
    void aChangeThatFailsLeavesAllAsItWas() {
        Project before = session.project();
        assertThrows(IllegalArgumentException.class, () -> session.edit("Blank title", titled(" ")));
        assertThrows(NullPointerException.class, () -> session.edit("No project", project -> null));
        assertEquals(before, session.project());
        assertEquals(Optional.empty(), session.undoName());
    }

    @Test
    void editsOfOneKeySoonAfterAnotherAreOneStep() {
        String first = title();
        session.edit("Type title", "$.title", titled("A"));
        clock.advance(Duration.ofSeconds(2));
        session.edit("Type title", "$.title", titled("AB"));
        clock.advance(Duration.ofSeconds(2));
        session.edit("Type title", "$.title", titled("ABC"));
        session.undo();
        assertEquals(first, title());
        session.redo();
        assertEquals("ABC", title());
    }

    @Test
    void aPauseAnotherKeyOrNoKeyBeginsAnotherStep() {
        session.edit("Type title", "$.title", titled("A"));
        clock.advance(Duration.ofMillis(2001));
        session.edit("Type title", "$.title", titled("B"));
        session.edit("Other field", "$.other", titled("C"));
        session.edit("Plain", titled("D"));
        session.edit("Plain", titled("E"));
        for (String expected : List.of("D", "C", "B", "A")) {
            session.undo();
            assertEquals(expected, title());
        }
    }

    @Test
    void savingUndoingAndRedoingEndMerging() throws Exception {
        session.edit("Type", "$.title", titled("A"));
        session.save();
        session.edit("Type", "$.title", titled("B"));
        session.undo();
        assertEquals("A", title());
        assertFalse(session.dirty(), "the saved state must be reachable");
        session.redo();
        session.edit("Type", "$.title", titled("C"));
        session.undo();
        assertEquals("B", title());
    }

    @Test
    void aMergedEditThatEndsWhereItBeganLeavesNoStep() {
        String first = title();
        session.edit("Type", "$.title", titled("A"));
        session.edit("Type", "$.title", titled(first));
        assertEquals(Optional.empty(), session.undoName());
        assertFalse(session.dirty());
    }

    @Test
    void undoIsBounded() {
        for (int number = 0; number <= ProjectSession.MOST_UNDO_STEPS; number++) {
            session.edit("Edit " + number, titled("T" + number));
        }
        int steps = 0;
        while (session.undoName().isPresent()) {
            session.undo();
            steps++;
        }
        assertEquals(ProjectSession.MOST_UNDO_STEPS, steps);
        assertEquals("T0", title());
        assertTrue(session.dirty(), "the saved state was forgotten, but not taken for reached");
    }

    @Test
    void savesAndKeepsUnknownFields() throws Exception {
        session.close(false);
        String text = Files.readString(SampleFolder.file(folder));
        Files.writeString(SampleFolder.file(folder), text.replaceFirst("\"title\"", "\"shelf\": \"B3\",\n  \"title\""));
        session = ProjectSession.open(folder, clock);
        assertEquals(1, session.fileProblems().size());
        String before = session.revisionSha256();
        session.edit("Name it", titled("One"));
        session.save();
        assertFalse(session.dirty());
        assertEquals("One", ProjectFile.read(folder).project().title());
        assertTrue(Files.readString(SampleFolder.file(folder)).contains("\"shelf\": \"B3\""));
        assertEquals(ProjectRevision.of(session.project()), session.revisionSha256());
        assertFalse(before.equals(session.revisionSha256()));
        session.undo();
        assertTrue(session.dirty(), "what was undone is saved");
        session.redo();
        assertFalse(session.dirty());
    }

    @Test
    void revertsAsAnEdit() {
        String first = title();
        session.edit("Name it", titled("One"));
        session.revertToSaved();
        assertEquals(first, title());
        assertFalse(session.dirty());
        session.undo();
        assertEquals("One", title());
        assertTrue(session.dirty());
    }

    @Test
    void aFolderWithoutAProjectIsSaidSoAndLeftAsItIs() throws Exception {
        Path empty = Files.createDirectory(parent.resolve("empty"));
        SessionException none = assertThrows(SessionException.class, () -> ProjectSession.open(empty, clock));
        assertTrue(none.getMessage().contains("holds no project.json"), none.getMessage());
        assertEquals(List.of(), SampleFolder.namesIn(empty));
        Path missing = parent.resolve("missing.ohmstead");
        SessionException gone = assertThrows(SessionException.class, () -> ProjectSession.open(missing, clock));
        assertTrue(gone.getMessage().contains("There is no file"), gone.getMessage());
    }

    @Test
    void aBrokenFileIsNotOpenedAndNotLocked() throws Exception {
        session.close(false);
        Files.writeString(SampleFolder.file(folder), "{\"formatVersion\": 1, \"title\": }");
        SessionException broken = assertThrows(SessionException.class, () -> ProjectSession.open(folder, clock));
        assertTrue(broken.getMessage().contains("line 1"), broken.getMessage());
        ProjectLock.acquire(folder).close();
    }

    @Test
    void aFailedSaveKeepsTheEdits() throws Exception {
        session.edit("Name it", titled("One"));
        Path away = Files.move(folder, parent.resolve("away"));
        SessionException refused = assertThrows(SessionException.class, session::save);
        assertTrue(refused.getMessage().contains("is gone"), refused.getMessage());
        assertFalse(Files.exists(folder), "no folder is made where a disk was taken out");
        assertTrue(session.dirty());
        assertEquals("One", title());
        Files.move(away, folder);
        session.save();
        assertFalse(session.dirty());
    }

    @Test
    void aClosedSessionLetsOthersWriteAndIsNotEditedAnyMore() throws Exception {
        session.close(false);
        session.close(false);
        ProjectLock.acquire(folder).close();
        assertThrows(IllegalStateException.class, () -> session.edit("Name it", titled("One")));
        assertThrows(SessionException.class, session::save);
        assertFalse(session.tryTakeOver());
    }

    @Test
    void savesOrderedTogetherDoNotTakeEachOtherForStrangers() throws Exception {
        session.edit("Name it", titled("One"));
        SaveOrder first = session.beginSave();
        session.edit("Name it", titled("Two"));
        SaveOrder second = session.beginSave();
        SaveOrder.Done one = first.carryOut();
        SaveOrder.Done two = second.carryOut();
        session.endSave(two);
        session.endSave(one);
        assertFalse(session.dirty(), "the older save does not count after the newer");
        assertEquals("Two", ProjectFile.read(folder).project().title());
        assertTrue(session.checkExternalChange() instanceof ExternalChange.Unchanged);
    }

    @Test
    void editsDuringASaveStayUnsaved() throws Exception {
        session.edit("Name it", titled("One"));
        SaveOrder order = session.beginSave();
        session.edit("Name it", titled("Two"));
        session.endSave(order.carryOut());
        assertTrue(session.dirty());
        session.undo();
        assertFalse(session.dirty());
    }
}
