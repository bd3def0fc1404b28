// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Project;

class LoadsAndPlanTest {
    @TempDir
    Path temp;

    @Test
    void stepsFollowALoadThatGetsAnotherIdInTheSameEdit() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new LoadsPage());
            Project before = stage.project();
            long uses = before.plan().stream()
                    .filter(step -> step.loadId().equals("4ohm"))
                    .count();
            stage.edit("loads", 1, "id", "four");
            assertEquals(
                    uses,
                    stage.project().plan().stream()
                            .filter(step -> step.loadId().equals("four"))
                            .count());
            assertTrue(uses > 0);
            assertTrue(stage.project().plan().stream()
                    .noneMatch(step -> step.loadId().equals("4ohm")));
            assertEquals(Optional.of("Set load id"), stage.undoName());
            stage.undo();
            assertEquals(before, stage.project());
        }
    }

    @Test
    void removingALoadThatStepsUseIsAllowedAndSaid() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new LoadsPage());
            Label missing = stage.find("loads.missing", Label.class);
            assertFalse(missing.isVisible());
            stage.editTable("loads").select(1, "id");
            stage.press("loads.remove");
            assertTrue(stage.project().load("4ohm").isEmpty());
            assertTrue(missing.isVisible());
            assertTrue(missing.getText().contains("a load that does not exist: 4ohm"), missing.getText());
            stage.undo();
            assertFalse(missing.isVisible());
        }
    }

    @Test
    void showsTheBranchesOfTheChosenLoadAndKeepsOne() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new LoadsPage());
            stage.editTable("loads").select(2, "id");
            stage.edit("branches", 1, "ohms", "2R02");
            assertEquals(2.02, stage.project().loads().get(2).branches().get(1).ohms());
            assertEquals(Optional.of("Set branch resistance of load 2ohm"), stage.undoName());
            stage.editTable("branches").select(0, "ohms");
            stage.press("branches.remove");
            stage.press("branches.remove");
            assertEquals(1, stage.project().loads().get(2).branches().size());
            assertTrue(stage.editTable("branches").message().contains("at least one branch"));
        }
    }

    @Test
    void marksABranchThatIsFarFromItsNominalValueInBothTables() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new LoadsPage());
            stage.editTable("loads").select(1, "id");
            stage.edit("branches", 1, "ohms", "5");
            stage.problemAt("$.loads[1].branches[1].ohms");
            assertTrue(stage.table("loads").getItem(1).getImage(3) != null);
            stage.editTable("loads").select(0, "id");
            stage.reveal("$.loads[1].branches[1].ohms");
            assertTrue(stage.table("branches").isFocusControl());
            assertTrue(stage.editTable("branches").message().contains("Measure it again"));
        }
    }

    @Test
    void takesTheLeadsInMilliohmsAndTheHeatInPercent() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new LoadsPage());
            stage.edit("branches", 1, "leadStandardUncertaintyOhms", "2");
            assertEquals(Optional.of("Set branch uncertainty of the leads of load 8ohm"), stage.undoName());
            stage.edit("branches", 1, "heatingRatio", "0.5");
            assertEquals(Optional.of("Set branch change when hot of load 8ohm"), stage.undoName());
            LoadBranch branch = stage.project().loads().get(0).branches().get(1);
            assertEquals(0.002, branch.leadStandardUncertaintyOhms(), 1e-15);
            assertEquals(0.005, branch.heatingRatio(), 1e-15);
        }
    }

    @Test
    void doubtsABranchThatChangesByMoreThanHalfWhenHot() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new LoadsPage());
            stage.edit("branches", 0, "heatingRatio", "60");
            stage.problemAt("$.loads[0].branches[0].heatingRatio");
            stage.reveal("$.loads[0].branches[0].heatingRatio");
            assertTrue(
                    stage.editTable("branches").message().contains("up to 60.0 % when it is hot"),
                    stage.editTable("branches").message());
            stage.edit("branches", 0, "heatingRatio", "0.6");
            stage.waitFor(() -> stage.desk.problems().stream()
                    .noneMatch(problem -> problem.where().endsWith("heatingRatio")));
            assertEquals(0.006, stage.project().loads().get(0).branches().get(0).heatingRatio(), 1e-15);
        }
    }

    @Test
    void asksForAYesToALoadBelowTheLowest() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new PlanPage());
            Label caution = stage.find("plan.caution", Label.class);
            assertTrue(caution.getText().contains("8 steps work below the lowest load"), caution.getText());
            assertTrue(caution.getText().contains("all confirmed"), caution.getText());
            int low = stage.project()
                    .plan()
                    .indexOf(stage.project().step("stereo-1ohm-11V5").orElseThrow());
            stage.edit("steps", low, "belowLowestLoadConfirmed", "");
            assertFalse(stage.project().plan().get(low).belowLowestLoadConfirmed());
            assertTrue(caution.getText().contains("7 confirmed"), caution.getText());
            stage.problemAt("$.plan[" + low + "].belowLowestLoadConfirmed");
            assertTrue(stage.editTable("steps").message().contains("accept the risk"));
        }
    }

    @Test
    void addsABlockOfStepsAsOneEditAndSkipsWhatIsThere() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new PlanPage());
            Project before = stage.project();
            stage.check("plan.addsteps", true);
            Label preview = stage.find("addsteps.preview", Label.class);
            assertFalse(stage.find("addsteps.add", Button.class).isEnabled());
            stage.check("addsteps.load.8ohm", true);
            stage.check("addsteps.load.1ohm", true);
            assertEquals("Nothing to add. 8 are in the plan already.", preview.getText());
            stage.type("addsteps.volts", "11.5 13,8");
            assertEquals("Adds 2 steps. 2 are in the plan already.", preview.getText());
            stage.check("addsteps.confirm", true);
            stage.press("addsteps.add");
            assertEquals(before.plan().size() + 2, stage.project().plan().size());
            assertTrue(stage.project().step("stereo-1ohm-13V8").orElseThrow().belowLowestLoadConfirmed());
            assertFalse(stage.project().step("stereo-8ohm-13V8").orElseThrow().belowLowestLoadConfirmed());
            assertEquals(Optional.of("Add 2 steps"), stage.undoName());
            assertEquals("Nothing to add. 4 are in the plan already.", preview.getText());
            stage.undo();
            assertEquals(before, stage.project());
            stage.press("addsteps.close");
            assertFalse(preview.isVisible());
        }
    }

    @Test
    void saysWhatDoesNotFitInABlockOfSteps() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new PlanPage());
            stage.check("plan.addsteps", true);
            stage.check("addsteps.load.8ohm", true);
            Label preview = stage.find("addsteps.preview", Label.class);
            stage.type("addsteps.volts", "twelve");
            assertTrue(preview.getText().contains("\"twelve\""), preview.getText());
            stage.type("addsteps.volts", "12");
            stage.check("addsteps.burst", true);
            stage.type("addsteps.period", "10");
            assertTrue(preview.getText().contains("longer than the burst"), preview.getText());
            assertFalse(stage.find("addsteps.add", Button.class).isEnabled());
        }
    }
}
