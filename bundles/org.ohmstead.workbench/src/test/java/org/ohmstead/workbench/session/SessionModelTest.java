// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.ohmstead.workbench.session.SampleFolder.titled;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.json.ProjectFile;

/** A session against the simplest model of one: all states in a list, and a finger on the current one. */
class SessionModelTest {
    private static final int OPERATIONS = 2500;

    @TempDir
    Path parent;

    private final List<String> titles = new ArrayList<>();
    private final List<String> names = new ArrayList<>();
    private int at;
    private String savedTitle = "";

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void doesWhatAListOfStatesDoes(long seed) throws Exception {
        Random random = new Random(seed);
        Path folder = SampleFolder.copyInto(parent);
        ProjectSession session = ProjectSession.open(folder, new HandClock());
        titles.add(session.project().title());
        savedTitle = titles.get(0);
        for (int operation = 0; operation < OPERATIONS; operation++) {
            step(session, random.nextInt(100), random);
            String where = "operation " + operation;
            assertEquals(titles.get(at), session.project().title(), where);
            assertEquals(!titles.get(at).equals(savedTitle), session.dirty(), where);
            assertEquals(at == 0 ? Optional.empty() : Optional.of(names.get(at - 1)), session.undoName(), where);
            assertEquals(at == names.size() ? Optional.empty() : Optional.of(names.get(at)), session.redoName(), where);
        }
        assertEquals(savedTitle, ProjectFile.read(folder).project().title());
        session.close(false);
    }

    private void step(ProjectSession session, int dice, Random random) throws SessionException {
        if (dice < 48) {
            edit(session, "Edit " + random.nextInt(1000), "T" + random.nextInt(40));
        } else if (dice < 75) {
            session.undo();
            at = Math.max(0, at - 1);
        } else if (dice < 94) {
            session.redo();
            at = Math.min(names.size(), at + 1);
        } else if (dice < 97) {
            session.save();
            savedTitle = titles.get(at);
        } else {
            session.revertToSaved();
            model("Revert to the saved project", savedTitle);
        }
    }

    private void edit(ProjectSession session, String name, String title) {
        session.edit(name, titled(title));
        model(name, title);
    }

    private void model(String name, String title) {
        if (title.equals(titles.get(at))) {
            return;
        }
        while (names.size() > at) {
            names.remove(names.size() - 1);
            titles.remove(titles.size() - 1);
        }
        names.add(name);
        titles.add(title);
        at++;
        if (names.size() > ProjectSession.MOST_UNDO_STEPS) {
            names.remove(0);
            titles.remove(0);
            at--;
        }
    }
}
