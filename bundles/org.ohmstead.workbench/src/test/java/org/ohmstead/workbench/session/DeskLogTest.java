// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.workbench.session.LogSnapshot.LogState;

class DeskLogTest extends DeskStage {
    @Test
    void readsTheLogAndHearsOfItsChanges() throws Exception {
        SampleLog.append(folder, 2);
        open();
        assertEquals(LogState.WHOLE, desk.log().state());
        assertEquals("2 entries, chain whole", desk.log().sentence());
        assertEquals(64, desk.log().headHash().length());
        desk.choose(desk.log().entry("R0002"));
        desk.startWatching();
        alarm.advance(Duration.ofSeconds(10));
        diary.read();
        SampleLog.append(folder, 1);
        alarm.advance(Duration.ofSeconds(2));
        assertEquals(3, desk.log().entries().size());
        assertEquals("R0002", desk.chosenEntry().orElseThrow().id());
        assertTrue(diary.read().contains("log WHOLE"));
        alarm.advance(Duration.ofSeconds(10));
        assertFalse(diary.read().contains("log WHOLE"), "reading itself is no change");
    }

    @Test
    void voidsAnEntryAlthoughItHoldsTheProjectsLock() throws Exception {
        SampleLog.append(folder, 1);
        open();
        desk.choose(desk.log().entry("R0001"));
        desk.voidEntry("R0001", "N. N.", "load lead was loose", failures::add);
        assertEquals(2, desk.log().entries().size());
        assertTrue(desk.chosenEntry().orElseThrow().voided());
        assertEquals(List.of(), desk.log().validReadings());
        desk.voidEntry("R0001", "N. N.", "again", failures::add);
        assertTrue(failures.remove(0).getMessage().contains("already voided"));
    }

    @Test
    void voidsNothingWithoutALogOrWhereEditsAreOff() throws Exception {
        open();
        desk.voidEntry("R0001", "", "no reason", failures::add);
        assertTrue(failures.remove(0).getMessage().contains("There is no log"));
        assertFalse(Files.exists(folder.resolve(TestLog.FILE_NAME)));
        desk.close(Unsaved.REFUSE);
        desk.voidEntry("R0001", "", "no reason", failures::add);
        assertTrue(failures.remove(0).getMessage().contains("No project is open"));
        ProjectLock other = ProjectLock.acquire(folder);
        open();
        desk.voidEntry("R0001", "", "no reason", failures::add);
        assertTrue(failures.remove(0).getMessage().contains("reading only"));
        other.close();
    }

    @Test
    void aTamperedLogIsBrokenAndNotAddedTo() throws Exception {
        SampleLog.append(folder, 2);
        SampleLog.tamper(folder);
        open();
        assertEquals(LogState.BROKEN, desk.log().state());
        assertEquals(2, desk.log().entries().size(), "they are shown, but not trusted");
        assertTrue(desk.log().sentence().contains("R0001"), desk.log().sentence());
        desk.voidEntry("R0001", "", "tampered", failures::add);
        assertTrue(failures.remove(0).getMessage().contains("not whole"));
        alarm.advance(Duration.ofMillis(150));
        assertTrue(desk.problems().stream().anyMatch(problem -> problem.where().equals("log.db")));
    }

    @Test
    void aFileThatIsNoLogIsUnreadable() throws Exception {
        Files.writeString(folder.resolve(TestLog.FILE_NAME), "not a database at all");
        open();
        assertEquals(LogState.UNREADABLE, desk.log().state());
        assertTrue(
                desk.log().sentence().contains("is not a test log"), desk.log().sentence());
    }

    @Test
    void onlyTheLatestReadingOfTheLogCounts() throws Exception {
        open();
        work.hold();
        desk.refreshLog();
        SampleLog.append(folder, 1);
        desk.close(Unsaved.REFUSE);
        work.letGo();
        assertSame(LogSnapshot.NONE, desk.log());
    }
}
