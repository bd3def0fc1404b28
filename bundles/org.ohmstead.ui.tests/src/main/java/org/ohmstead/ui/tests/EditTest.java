// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchCommandConstants;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.json.ProjectFile;

/** Editing the project: a cell, undo, redo, save, open again; a broken field and its problem. */
class EditTest {
    private static final String RATING = "$.amplifier.ratings[0].powerWatts";

    private final Bench bench = Bench.running();

    @TempDir
    Path folder;

    @BeforeEach
    void open() throws Exception {
        bench.perspective("org.ohmstead.app.design");
        bench.openCopy(folder);
    }

    @AfterEach
    void close() throws Exception {
        bench.close();
        bench.reportStalls(getClass().getSimpleName());
    }

    private double watts() {
        return bench.session().project().amplifier().ratings().get(0).powerWatts();
    }

    private void type(String where, String entry, String text) {
        bench.go(where);
        Table table = (Table) bench.display().getFocusControl();
        bench.key(table, 0, SWT.F2, (char) 0);
        Text cell = bench.find(entry, Text.class);
        cell.setText(text);
        bench.key(cell, 0, SWT.CR, SWT.CR);
    }

    @Test
    void aRatingIsEditedTakenBackMadeAgainSavedAndReadAgain() throws Exception {
        double before = watts();
        type(RATING, "ratings.entry", "1k2");
        assertEquals(1200, watts());
        assertTrue(bench.shell().getText().startsWith("*"), bench.shell().getText());
        bench.command(IWorkbenchCommandConstants.EDIT_UNDO);
        assertEquals(before, watts());
        assertFalse(bench.session().dirty());
        bench.command(IWorkbenchCommandConstants.EDIT_REDO);
        assertEquals(1200, watts());
        bench.command(IWorkbenchCommandConstants.FILE_SAVE);
        bench.pump().until(() -> !bench.session().dirty(), "The project was not saved.");
        Path project = bench.session().folder();
        assertEquals(
                1200,
                ProjectFile.read(project).project().amplifier().ratings().get(0).powerWatts());
        bench.open(project);
        assertEquals(1200, watts());
        assertTrue(bench.session().undoName().isEmpty());
    }

    @Test
    void aFieldThatDoesNotFitIsRefusedBesideItAndLosesNothing() {
        double before = watts();
        bench.go(RATING);
        Table table = (Table) bench.display().getFocusControl();
        bench.key(table, 0, SWT.F2, (char) 0);
        Text cell = bench.find("ratings.entry", Text.class);
        cell.setText("-5 W");
        bench.key(cell, 0, SWT.CR, SWT.CR);
        assertEquals(before, watts());
        assertEquals("-5 W", cell.getText());
        bench.key(cell, 0, SWT.ESC, SWT.ESC);
        assertFalse(bench.session().dirty());
    }

    @Test
    void aBrokenFieldIsAProblemThatLeadsToIt() throws Exception {
        type("$.plan[0].supplyVolts", "steps.entry", "99 V");
        assertEquals(99, bench.session().project().plan().get(0).supplyVolts());
        bench.pump()
                .until(
                        () -> bench.desk().problems().stream()
                                .anyMatch(found -> found.where().equals("$.plan[0].supplyVolts")),
                        () -> "The problem was not found: " + bench.desk().problems());
        bench.view("org.ohmstead.workbench.problems");
        Table problems = bench.find("problems.table", Table.class);
        int row = -1;
        for (int index = 0; index < problems.getItemCount(); index++) {
            String line = problems.getItem(index).getText(0)
                    + problems.getItem(index).getText(1)
                    + problems.getItem(index).getText(2);
            if (line.contains("99")) {
                row = index;
            }
        }
        assertTrue(row >= 0, "The problem is not listed.");
        problems.setSelection(row);
        bench.send(problems, SWT.Selection);
        bench.page().closeAllEditors(false);
        bench.pump().settle();
        bench.send(problems, SWT.DefaultSelection);
        assertEquals("steps.table", bench.focusName().orElse("nothing named"));
        bench.command(IWorkbenchCommandConstants.EDIT_UNDO);
        bench.pump()
                .until(
                        () -> bench.desk().problems().stream()
                                .noneMatch(found -> found.where().equals("$.plan[0].supplyVolts")),
                        "The problem stayed.");
    }
}
