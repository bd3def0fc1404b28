// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.session.ProblemProvider;
import org.ohmstead.workbench.session.ProjectView;
import org.ohmstead.workbench.session.Registration;

/** Where rows and lists show the problems that are about them. */
class RowProblemsTest {
    @TempDir
    Path temp;

    @Test
    void marksAnOverdueMeterByIconAndWords() throws Exception {
        LocalDate due = LocalDate.now(ZoneOffset.UTC).minusDays(40);
        try (SectionStage stage = SectionStage.open(temp, text -> text.replaceFirst("2028-01-20", due.toString()))) {
            stage.show(new BenchPage());
            stage.problemAt("$.bench.meters[0].calibrationDueOn");
            assertTrue(stage.table("meters").getItem(0).getText(3).startsWith("overdue by 4"));
            assertTrue(stage.table("meters").getItem(0).getImage(3) != null);
            stage.reveal("$.bench.meters[0].calibrationDueOn");
            assertTrue(stage.editTable("meters").message().contains("Have it calibrated"));
            assertTrue(stage.table("meters").isFocusControl());
        }
    }

    @Test
    void jumpsToTheCellOfAProblemAndSaysItsRemedy() throws Exception {
        try (SectionStage stage =
                SectionStage.open(temp, text -> text.replaceFirst("\"supplyVolts\": 11.5", "\"supplyVolts\": 17"))) {
            stage.show(new PlanPage());
            stage.problemAt("$.plan[0].supplyVolts");
            assertTrue(stage.table("steps").getItem(0).getImage(4) != null);
            stage.reveal("$.plan[0].supplyVolts");
            assertTrue(stage.table("steps").isFocusControl());
            assertTrue(stage.editTable("steps").message().contains("Choose a voltage within the range"));
            stage.key(stage.table("steps"), SWT.F2);
            assertEquals("17", stage.find("steps.entry", Text.class).getText());
            stage.key(stage.find("steps.entry", Text.class), SWT.ESC);
            stage.edit("steps", 0, "supplyVolts", "14");
            stage.waitFor(() -> stage.table("steps").getItem(0).getImage(4) == null);
        }
    }

    @Test
    void marksTheCellOfWhatElseIsKnownOfAPart() throws Exception {
        Map<String, String> columns = Map.of(
                "temperatureCoefficientPerKelvin", "Drift",
                "inductanceHenries", "Inductance",
                "sinkKelvinPerWatt", "Case to air",
                "elementKelvinPerWatt", "Wire to case",
                "pulseRule.durationSeconds", "Short overload");
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new PartsPage());
            Table table = stage.table("parts");
            for (Map.Entry<String, String> each : columns.entrySet()) {
                String where = "$.bench.parts[1].traits." + each.getKey();
                Registration told = stage.desk.addProblemProvider(new ProblemProvider() {
                    @Override
                    public String name() {
                        return "One trait";
                    }

                    @Override
                    public List<Problem> problems(ProjectView view) {
                        return List.of(new Problem(Severity.WARNING, where, "It is odd.", "Mend it."));
                    }
                });
                stage.problemAt(where);
                for (int column = 0; column < table.getColumnCount(); column++) {
                    assertEquals(
                            table.getColumn(column).getText().startsWith(each.getValue()),
                            table.getItem(1).getImage(column) != null,
                            where + " in column " + column);
                }
                stage.reveal(where);
                assertEquals("It is odd. Mend it.", stage.editTable("parts").message());
                told.close();
                stage.waitFor(() -> stage.desk.problems().stream()
                        .noneMatch(problem -> problem.where().equals(where)));
            }
        }
    }

    @Test
    void saysThatAListAsAWholeLacksSomething() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new BenchPage());
            Label line = stage.find("bench.meters.list", Label.class);
            assertFalse(line.isVisible());
            stage.editTable("meters").select(0, "id");
            stage.press("meters.remove");
            stage.problemAt("$.bench.meters");
            assertTrue(line.isVisible());
            assertTrue(line.getText().contains("no meter for output volts"), line.getText());
        }
    }
}
