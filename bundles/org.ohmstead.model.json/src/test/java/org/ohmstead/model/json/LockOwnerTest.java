// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LockOwnerTest {
    @TempDir
    Path folder;

    @Test
    void readsWhatTheLockFileSays() {
        LockOwner owner = LockOwner.parse("process 4711 on bench2, user lab, left, since 2026-03-02T09:14:05Z\n");
        assertEquals(OptionalLong.of(4711), owner.processId());
        assertEquals(Optional.of("bench2"), owner.host());
        assertEquals(Optional.of(Instant.parse("2026-03-02T09:14:05Z")), owner.since());
        assertEquals("process 4711 on bench2", owner.inWords());
        assertFalse(owner.isThisProcess());
        assertFalse(owner.isOnThisComputer());
    }

    @Test
    void takesAnyTextForAnOwner() {
        assertEquals("another program", LockOwner.parse(" \n").inWords());
        assertEquals("somebody", LockOwner.parse("somebody").inWords());
        LockOwner odd = LockOwner.parse("process 4711 on bench2, user lab, since noon");
        assertEquals(Optional.empty(), odd.since());
        assertEquals(OptionalLong.of(4711), odd.processId());
        assertEquals(
                OptionalLong.empty(),
                LockOwner.parse("process 99999999999999999999 on b, user u, since noon")
                        .processId());
    }

    @Test
    void knowsItself() {
        LockOwner self = LockOwner.current();
        assertTrue(self.isThisProcess());
        assertEquals("another window of this program", self.inWords());
        LockOwner neighbour = LockOwner.parse(
                self.text().replace("process " + ProcessHandle.current().pid(), "process 1234567890"));
        assertEquals("process 1234567890 on this computer", neighbour.inWords());
    }

    @Test
    void aTryForTheLockSaysWhoHasIt() throws Exception {
        ProjectLock.Attempt.Taken taken =
                assertInstanceOf(ProjectLock.Attempt.Taken.class, ProjectLock.attempt(folder));
        ProjectLock.Attempt.Held held = assertInstanceOf(ProjectLock.Attempt.Held.class, ProjectLock.attempt(folder));
        assertTrue(held.owner().isThisProcess());
        taken.lock().close();
    }
}
