// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.session.ProblemProvider;
import org.ohmstead.workbench.session.ProjectView;

class ProblemsCompositeTest {
    @TempDir
    Path temp;

    private static String broken(String text) {
        return text.replaceFirst("\"supplyVolts\": 11.5", "\"supplyVolts\": 17")
                .replaceFirst("\"ohms\": 8.0,\\s+\"standard", "\"ohms\": 8.9, \"standard");
    }

    @Test
    void listsProblemsInPlainWordsAndJumpsToTheirCause() throws Exception {
        List<Problem> jumps = new ArrayList<>();
        try (SectionStage stage = SectionStage.open(temp, ProblemsCompositeTest::broken)) {
            stage.show(shell -> new ProblemsComposite(shell, stage.desk, jumps::add));
            Problem error = stage.problemAt("$.plan[0].supplyVolts");
            Table table = stage.find("problems.table", Table.class);
            assertEquals(2, table.getItemCount());
            assertEquals(
                    "1 error, 1 warning",
                    stage.find("problems.count", Label.class).getText());
            assertEquals("Error", table.getItem(0).getText(0));
            assertEquals("Step stereo-8ohm-11V5, supply volts", table.getItem(0).getText(2));
            assertEquals("Load 8ohm, branch 1, resistance", table.getItem(1).getText(2));
            assertFalse(stage.find("problems.goto", Button.class).isEnabled());
            table.setSelection(0);
            table.notifyListeners(SWT.Selection, new Event());
            stage.press("problems.goto");
            table.notifyListeners(SWT.DefaultSelection, new Event());
            assertEquals(List.of(error, error), jumps);
            assertEquals(
                    error.remedy(),
                    stage.find("problems.detail.remedy", Label.class).getText());
            stage.control(table, 'c');
            assertTrue(
                    stage.clipboard().startsWith("Severity\tProblem\tWhere\tRemedy\nError\tThe step"),
                    stage.clipboard());
        }
    }

    @Test
    void showsRowsInALowViewToo() throws Exception {
        try (SectionStage stage = SectionStage.open(temp, ProblemsCompositeTest::broken)) {
            stage.show(shell -> new ProblemsComposite(shell, stage.desk, problem -> {}));
            stage.problemAt("$.plan[0].supplyVolts");
            Table table = stage.find("problems.table", Table.class);
            Composite frame = table.getParent();
            Composite detail = stage.find("problems.detail.remedy", Label.class).getParent();
            stage.shell.setSize(1100, 190);
            stage.waitFor(() -> detail.getLocation().x > frame.getSize().x);
            int rows = table.getClientArea().height / table.getItemHeight();
            assertTrue(rows >= 3, "room for " + rows + " rows and the heading");
            stage.shell.setSize(1100, 700);
            stage.waitFor(() -> detail.getLocation().y > frame.getSize().y);
            assertEquals(frame.getLocation().x, detail.getLocation().x);
        }
    }

    @Test
    void filtersAndSorts() throws Exception {
        try (SectionStage stage = SectionStage.open(temp, ProblemsCompositeTest::broken)) {
            stage.show(shell -> new ProblemsComposite(shell, stage.desk, problem -> {}));
            stage.problemAt("$.plan[0].supplyVolts");
            Table table = stage.find("problems.table", Table.class);
            table.getColumn(2).notifyListeners(SWT.Selection, new Event());
            assertEquals("Load 8ohm, branch 1, resistance", table.getItem(0).getText(2));
            table.getColumn(2).notifyListeners(SWT.Selection, new Event());
            assertEquals("Step stereo-8ohm-11V5, supply volts", table.getItem(0).getText(2));
            stage.choose("problems.severity", "Warnings only");
            assertEquals(1, table.getItemCount());
            assertEquals(
                    "1 of 2 shown", stage.find("problems.count", Label.class).getText());
            stage.type("problems.filter", "nothing like it");
            assertEquals(
                    "No problem matches.",
                    stage.find("problems.empty", Label.class).getText());
            stage.type("problems.filter", "BRANCH wires");
            assertEquals(1, table.getItemCount());
        }
    }

    @Test
    void listsProblemsOfTheProgramWithoutAProject() throws Exception {
        Problem fault = new Problem(Severity.WARNING, "module x", "The module x does not run.", "Take it away.");
        try (SectionStage stage = SectionStage.closed(temp)) {
            stage.show(shell -> new ProblemsComposite(shell, stage.desk, problem -> {}));
            assertTrue(stage.find("problems.empty", Label.class).isVisible());
            stage.desk.addProblemProvider(new ProblemProvider() {
                @Override
                public List<Problem> problems(ProjectView view) {
                    return List.of();
                }

                @Override
                public List<Problem> problemsWithoutProject() {
                    return List.of(fault);
                }
            });
            Table table = stage.find("problems.table", Table.class);
            stage.waitFor(() -> table.getItemCount() == 1);
            assertTrue(table.isVisible(), "the note of an empty view covers it");
            assertEquals(fault.what(), table.getItem(0).getText(1));
            assertEquals("module x", table.getItem(0).getText(2));
            assertEquals("1 warning", stage.find("problems.count", Label.class).getText());
            table.setSelection(0);
            table.notifyListeners(SWT.Selection, new Event());
            assertEquals(
                    fault.remedy(),
                    stage.find("problems.detail.remedy", Label.class).getText());
            assertFalse(stage.find("problems.goto", Button.class).isEnabled(), "there is nowhere to go");
            stage.openProject();
            stage.waitFor(() -> table.getItemCount() == 0);
        }
    }

    @Test
    void tellsWhenAllIsWellAndWhenNothingIsOpen() throws Exception {
        try (SectionStage stage = SectionStage.closed(temp)) {
            stage.show(shell -> new ProblemsComposite(shell, stage.desk, problem -> {}));
            Label empty = stage.find("problems.empty", Label.class);
            assertEquals("No project is open.", empty.getText());
            stage.openProject();
            stage.waitFor(() -> empty.getText().equals("No problems found."));
            stage.desk.session().orElseThrow().edit("Set plan", project -> project.withPlan(List.of()));
            stage.waitFor(() -> stage.find("problems.table", Table.class).getItemCount() == 6);
            stage.undo();
            stage.waitFor(() -> empty.isVisible() && empty.getText().equals("No problems found."));
            stage.key(stage.find("problems.table", Table.class), SWT.F5);
            stage.press("problems.check");
            assertEquals("No problems found.", empty.getText());
        }
    }
}
