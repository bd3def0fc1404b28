// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class EditHistoryTest {
    private final EditHistory<String> history = new EditHistory<>("a", 3, Duration.ofSeconds(2));

    private void edit(String value) {
        history.edit("to " + value, value, Optional.empty(), Instant.EPOCH);
    }

    @Test
    void namesTheStepsFromTheSavedValueForwards() {
        edit("b");
        history.markSaved();
        edit("c");
        edit("d");
        assertEquals(List.of("to c", "to d"), history.namesSinceSaved());
    }

    @Test
    void namesTheStepsFromTheSavedValueBackwards() {
        edit("b");
        edit("c");
        history.markSaved();
        history.undo();
        history.undo();
        assertEquals(List.of("Undo to c", "Undo to b"), history.namesSinceSaved());
        history.redo();
        assertEquals(List.of("Undo to c"), history.namesSinceSaved());
    }

    @Test
    void namesAllStepsWhenTheSavedValueIsNotAmongThem() {
        edit("b");
        history.markSaved();
        history.undo();
        edit("c");
        assertEquals(List.of("to c"), history.namesSinceSaved());
        for (String value : List.of("d", "e", "f")) {
            edit(value);
        }
        assertEquals(List.of("to d", "to e", "to f"), history.namesSinceSaved());
    }

    @Test
    void aClockThatIsSetBackDoesNotMergeWhatWasEditedMuchLater() {
        Instant noon = Instant.parse("2026-03-03T12:00:00Z");
        history.edit("to b", "b", Optional.of("field"), noon);
        history.edit("to c", "c", Optional.of("field"), noon.plusSeconds(1));
        history.edit("to d", "d", Optional.of("field"), noon.minusSeconds(3600));
        history.undo();
        assertEquals("c", history.current());
        history.undo();
        assertEquals("a", history.current());
    }

    @Test
    void forgetsTheOldest() {
        for (String value : List.of("b", "c", "d", "e")) {
            edit(value);
        }
        while (history.undoName().isPresent()) {
            history.undo();
        }
        assertEquals("b", history.current());
    }
}
