// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Numbers;

/** What the open project has to say to those who read German. */
class GermanSessionTest extends DeskStage {
    private String before;

    @BeforeEach
    void speakGerman() {
        before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
        Numbers.useLanguagesSign();
    }

    @AfterEach
    void asUsual() {
        Numbers.useDecimalComma(false);
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    @Test
    void theStatusIsGermanWithACommaInItsNumbers() {
        open();
        String sentences = String.join(" ", desk.status().orElseThrow().sentences());
        assertTrue(sentences.contains("22,5 \u00b0C"), sentences);
        assertTrue(sentences.contains("Alle \u00c4nderungen sind gespeichert."), sentences);
        assertTrue(sentences.contains("Protokoll: "), sentences);
    }

    @Test
    void aStateOfTheLogIsSaidInTheLanguageSpokenThen() {
        assertEquals("noch kein Protokoll", LogSnapshot.NONE.sentence());
        System.setProperty(Language.PROPERTY, "en");
        assertEquals("no test log yet", LogSnapshot.NONE.sentence());
    }

    @Test
    void aFaultyCheckIsToldInGerman() throws InterruptedException {
        ProblemCollector collector = new ProblemCollector(ProblemDesk.DEBOUNCE);
        collector.add(view -> {
            throw new IllegalStateException("kaputt");
        });
        open();
        ProjectSession session = desk.session().orElseThrow();
        ProjectView view = new ProjectView(
                session.folder(), session.project(), List.of(), LogSnapshot.NONE, java.time.LocalDate.EPOCH);
        var found = collector.collect(view, new WorkProgress() {
            @Override
            public void step(int done, int total, String what) {
                assertTrue(done <= total);
            }

            @Override
            public boolean cancelled() {
                return false;
            }
        });
        assertEquals(1, found.size());
        assertEquals(Severity.WARNING, found.get(0).severity());
        assertTrue(
                found.get(0).what().endsWith("ist gescheitert (kaputt), also fehlt hier, was sie f\u00e4nde."),
                found.toString());
    }

    @Test
    void anUndoneEditIsNamedInGerman() {
        EditHistory<String> history = new EditHistory<>("a", 10, ProjectSession.MERGE_WITHIN);
        history.edit("Namen \u00e4ndern", "b", Optional.empty(), clock.instant());
        history.markSaved();
        history.undo();
        assertEquals(List.of("R\u00fcckg\u00e4ngig: Namen \u00e4ndern"), history.namesSinceSaved());
    }
}
