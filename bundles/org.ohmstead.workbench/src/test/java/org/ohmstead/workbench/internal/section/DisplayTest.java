// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Stimulus;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.session.DisplaySettings;

/** The pages show numbers as the user wants them, at once. */
class DisplayTest {
    private static final DisplaySettings COMMA = new DisplaySettings(2, true);
    /** The demo's rating at 13.8 V. */
    private static final int RATING = 3;

    @TempDir
    Path temp;

    @AfterEach
    void asUsual() {
        Numbers.useDecimalComma(false);
        Coverage.use(Coverage.USUAL_FACTOR);
    }

    private static String supply(SectionStage stage) {
        Table table = stage.table("ratings");
        for (int column = 0; column < table.getColumnCount(); column++) {
            if (table.getColumn(column).getText().equals("At supply (V)")) {
                return table.getItem(RATING).getText(column);
            }
        }
        throw new AssertionError("there is no column of supply volts");
    }

    @Test
    void cellsAndFieldsFollowWhileTheyAreOpen() throws Exception {
        try (SectionStage stage = SectionStage.open(temp).show(new AmplifierPage())) {
            assertEquals("13.8", supply(stage));
            stage.desk.setDisplay(COMMA);
            stage.pump();
            assertEquals("13,8", supply(stage));
            stage.desk.setDisplay(DisplaySettings.USUAL);
            stage.pump();
            assertEquals("13.8", supply(stage));
        }
        try (SectionStage stage = SectionStage.open(temp.resolve("bench")).show(new BenchPage())) {
            Text ambient = stage.find("bench.place.ambient", Text.class);
            assertEquals("22.5", ambient.getText());
            stage.desk.setDisplay(COMMA);
            assertEquals("22,5", ambient.getText());
            assertEquals(Optional.empty(), stage.undoName());
        }
    }

    @Test
    void anEditorOpensWithTheSignAndTakesEither() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.desk.setDisplay(COMMA);
            stage.show(new AmplifierPage());
            stage.editTable("ratings").select(RATING, "supplyVolts");
            stage.pump();
            stage.key(stage.table("ratings"), SWT.F2);
            Text entry = stage.find("ratings.entry", Text.class);
            assertEquals("13,8", entry.getText());
            stage.key(entry, SWT.CR);
            assertTrue(stage.undoName().isEmpty(), "nothing was changed");
            stage.edit("ratings", RATING, "supplyVolts", "13,75");
            assertEquals("13,75", supply(stage));
            stage.edit("ratings", RATING, "supplyVolts", "13.65");
            assertEquals("13,65", supply(stage));
            assertEquals(
                    13.65, stage.project().amplifier().ratings().get(RATING).supplyVolts());
        }
    }

    @Test
    void copiesKeepThePoint() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.desk.setDisplay(COMMA);
            stage.show(new AmplifierPage());
            stage.editTable("ratings").select(RATING, "supplyVolts");
            stage.pump();
            stage.control(stage.table("ratings"), 'c');
            assertTrue(stage.clipboard().contains("\t13.8\t"), stage.clipboard());
        }
    }

    @Test
    void theHoverOfABranchHasTheChosenFactor() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            LoadBranch branch = new LoadBranch(4, 0.004, 0, "");
            assertEquals("4 \u03a9 \u00b1 8 m\u03a9 (k = 2)", BranchBinding.measured(branch));
            stage.desk.setDisplay(new DisplaySettings(1, false));
            assertEquals("4 \u03a9 \u00b1 4 m\u03a9 (k = 1)", BranchBinding.measured(branch));
        }
    }

    @Test
    void idsOfStepsDoNotFollow() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.desk.setDisplay(COMMA);
            PlanMatrix matrix = new PlanMatrix(
                    List.of(Mode.STEREO),
                    List.of(stage.project().loads().get(0).id()),
                    List.of(13.65),
                    List.of(new Stimulus.ContinuousSine(1000)),
                    StepTable.USUAL_END,
                    false);
            String id = matrix.missingIn(stage.project()).get(0).id();
            assertTrue(id.endsWith("-13V65"), id);
        }
    }
}
