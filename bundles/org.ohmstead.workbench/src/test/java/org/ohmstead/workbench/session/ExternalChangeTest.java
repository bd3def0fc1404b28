// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static org.ohmstead.workbench.session.SampleFolder.titled;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.json.ProjectFile;

class ExternalChangeTest {
    @TempDir
    Path parent;

    private Path folder;
    private Path file;
    private ProjectSession session;

    @BeforeEach
    void open() throws IOException, SessionException {
        folder = SampleFolder.copyInto(parent);
        file = SampleFolder.file(folder);
        session = ProjectSession.open(folder, new HandClock());
    }

    @AfterEach
    void close() throws SessionException {
        session.close(false);
    }

    private String titleOnDisk() throws Exception {
        return ProjectFile.read(folder).project().title();
    }

    @Test
    void nothingChanged() throws Exception {
        assertInstanceOf(ExternalChange.Unchanged.class, session.checkExternalChange());
        session.edit("Name it", titled("Mine"));
        assertInstanceOf(ExternalChange.Unchanged.class, session.checkExternalChange());
        session.save();
        assertInstanceOf(ExternalChange.Unchanged.class, session.checkExternalChange());
    }

    @Test
    void aFileThatWasOnlyTouchedIsUnchanged() throws Exception {
        Files.setLastModifiedTime(file, FileTime.from(Instant.now().plusSeconds(60)));
        assertInstanceOf(ExternalChange.Unchanged.class, session.checkExternalChange());
        session.edit("Name it", titled("Mine"));
        session.save();
        assertEquals("Mine", titleOnDisk());
    }

    @Test
    void aChangeOfSameSizeAndTimeSoonAfterReadingIsFound() throws Exception {
        FileTime time = Files.getLastModifiedTime(file);
        String title = session.project().title();
        SampleFolder.editOutside(folder, "X" + title.substring(1));
        Files.setLastModifiedTime(file, time);
        assertInstanceOf(ExternalChange.ChangedClean.class, session.checkExternalChange());
    }

    @Test
    void aChangeWithoutUnsavedEditsIsReloadedAndCanBeUndone() throws Exception {
        String first = session.project().title();
        SampleFolder.editOutside(folder, "Theirs");
        ExternalChange.ChangedClean change =
                assertInstanceOf(ExternalChange.ChangedClean.class, session.checkExternalChange());
        assertEquals("Theirs", change.loaded().project().title());
        session.reloadFromDisk();
        assertEquals("Theirs", session.project().title());
        assertFalse(session.dirty());
        assertEquals("Reload from disk", session.undoName().orElseThrow());
        assertEquals(change.loaded().revisionSha256(), session.revisionSha256());
        session.undo();
        assertEquals(first, session.project().title());
        assertTrue(session.dirty());
        session.save();
        assertEquals(first, titleOnDisk());
    }

    @Test
    void aConflictIsNotSavedOverUntilTheUserChooses() throws Exception {
        session.edit("Name it", titled("Mine"));
        SampleFolder.editOutside(folder, "Theirs");
        assertInstanceOf(ExternalChange.ChangedWhileDirty.class, session.checkExternalChange());
        SessionException refused = assertThrows(SessionException.class, session::save);
        assertTrue(refused.getMessage().contains("was changed outside"), refused.getMessage());
        assertEquals("Theirs", titleOnDisk());
        assertEquals("Mine", session.project().title());
        assertTrue(session.dirty());
    }

    @Test
    void keepingMineOverwritesWhatWasSeenButNothingLater() throws Exception {
        session.edit("Name it", titled("Mine"));
        SampleFolder.editOutside(folder, "Theirs");
        session.keepMine();
        assertTrue(session.dirty());
        assertInstanceOf(ExternalChange.Unchanged.class, session.checkExternalChange());
        SampleFolder.editOutside(folder, "Theirs again");
        assertThrows(SessionException.class, session::save);
        session.keepMine();
        session.save();
        assertEquals("Mine", titleOnDisk());
        assertFalse(session.dirty());
    }

    @Test
    void keepingMineKeepsTheirUnknownFields() throws Exception {
        session.edit("Name it", titled("Mine"));
        String text = Files.readString(file);
        Files.writeString(
                file, text.replaceFirst("\"title\": \"[^\"]*\"", "\"shelf\": \"B3\",\n  \"title\": \"Theirs\""));
        session.keepMine();
        session.save();
        assertEquals("Mine", titleOnDisk());
        assertTrue(Files.readString(file).contains("\"shelf\": \"B3\""));
    }

    @Test
    void reloadingInAConflictCanBeUndoneToMine() throws Exception {
        session.edit("Name it", titled("Mine"));
        SampleFolder.editOutside(folder, "Theirs");
        session.reloadFromDisk();
        assertEquals("Theirs", session.project().title());
        session.undo();
        assertEquals("Mine", session.project().title());
        session.save();
        assertEquals("Mine", titleOnDisk());
    }

    @Test
    void anotherLayoutOfTheSameProjectIsNoConflict() throws Exception {
        session.edit("Name it", titled("Mine"));
        String text = Files.readString(file);
        Files.writeString(file, text.replaceFirst("\"title\"", "\"shelf\": \"B3\",\n\n  \"title\""));
        assertInstanceOf(ExternalChange.Unchanged.class, session.checkExternalChange());
        session.save();
        assertEquals("Mine", titleOnDisk());
        assertTrue(Files.readString(file).contains("\"shelf\": \"B3\""));
    }

    @Test
    void theSameChangeThereAndHereIsNoConflict() throws Exception {
        session.edit("Name it", titled("Same"));
        SampleFolder.editOutside(folder, "Same");
        assertInstanceOf(ExternalChange.Unchanged.class, session.checkExternalChange());
        assertFalse(session.dirty());
    }

    @Test
    void aVanishedFileIsToldAndWrittenAnewByASave() throws Exception {
        Files.delete(file);
        ExternalChange.Vanished vanished =
                assertInstanceOf(ExternalChange.Vanished.class, session.checkExternalChange());
        assertTrue(vanished.sentence().contains("is gone"), vanished.sentence());
        assertThrows(SessionException.class, session::reloadFromDisk);
        session.keepMine();
        assertTrue(session.dirty(), "what is nowhere on the disk is unsaved");
        assertInstanceOf(ExternalChange.Unchanged.class, session.checkExternalChange());
        session.save();
        assertEquals(session.project(), ProjectFile.read(folder).project());
        assertFalse(session.dirty());
    }

    @Test
    void anUnreadableFileIsToldAndOverwrittenOnlyKnowingly() throws Exception {
        session.edit("Name it", titled("Mine"));
        Files.writeString(file, "{\"formatVersion\": 1, \"title\": }");
        ExternalChange.Unreadable unreadable =
                assertInstanceOf(ExternalChange.Unreadable.class, session.checkExternalChange());
        assertTrue(unreadable.sentence().contains("line 1"), unreadable.sentence());
        assertThrows(SessionException.class, session::reloadFromDisk);
        assertThrows(SessionException.class, session::save);
        assertEquals("Mine", session.project().title());
        session.keepMine();
        session.save();
        assertEquals("Mine", titleOnDisk());
    }

    @Test
    @Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void aPipeInPlaceOfTheFileKeepsNobodyWaiting() throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "this system has no named pipes");
        Path pipe = folder.resolve("pipe");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        DiskLook look = DiskLook.at(pipe, FileStamp.missing());
        assertTrue(((DiskLook.Unreadable) look).sentence().contains("it is a pipe or a device and no file"));
        Files.move(pipe, folder.resolve("project.json"), StandardCopyOption.REPLACE_EXISTING);
        assertThrows(SessionException.class, () -> ProjectSession.open(folder, new HandClock()));
    }
}
