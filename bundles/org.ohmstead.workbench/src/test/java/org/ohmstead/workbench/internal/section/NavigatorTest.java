// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.workbench.section.SectionPage;

class NavigatorTest {
    @TempDir
    Path temp;

    /** Notes what the navigator asks for. */
    private static final class Asked implements NavigatorActions {
        private final List<String> all = new ArrayList<>();

        @Override
        public void open(SectionPage page, Optional<String> where) {
            all.add(page.id() + " " + where.orElse("whole"));
        }

        @Override
        public void openDemo() {
            all.add("demo");
        }

        @Override
        public void openProject() {
            all.add("project");
        }
    }

    private static void open(Tree tree, TreeItem item) {
        tree.setSelection(item);
        Event event = new Event();
        event.item = item;
        tree.notifyListeners(SWT.DefaultSelection, event);
    }

    private static TreeItem expand(SectionStage stage, Tree tree, TreeItem item) {
        Event event = new Event();
        event.item = item;
        tree.notifyListeners(SWT.Expand, event);
        stage.pump();
        return item;
    }

    @Test
    void offersTheDemoAndAProjectWhenNoneIsOpen() throws Exception {
        Asked asked = new Asked();
        try (SectionStage stage = SectionStage.closed(temp)) {
            stage.show(shell -> new NavigatorComposite(shell, stage.desk, new SectionPages(List.of()), asked));
            assertTrue(stage.find("navigator.demo", Link.class).isVisible());
            stage.press("navigator.demo");
            stage.press("navigator.open");
            assertEquals(List.of("demo", "project"), asked.all);
            stage.openProject();
            stage.pump();
            assertTrue(stage.find("navigator.tree", Tree.class).isVisible());
            assertEquals(8, stage.find("navigator.tree", Tree.class).getItem(0).getItemCount());
        }
    }

    @Test
    void opensPagesAndTheirEntries() throws Exception {
        Asked asked = new Asked();
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(shell -> new NavigatorComposite(shell, stage.desk, new SectionPages(List.of()), asked));
            Tree tree = stage.find("navigator.tree", Tree.class);
            TreeItem project = tree.getItem(0);
            assertEquals("Larkspur L2-90: what it delivers", project.getText());
            assertTrue(
                    project.getItem(3).getText().startsWith("Loads"),
                    project.getItem(3).getText());
            open(tree, project.getItem(0));
            TreeItem loads = expand(stage, tree, project.getItem(3));
            assertEquals("2ohm", loads.getItem(2).getText());
            open(tree, loads.getItem(2));
            assertEquals(List.of("amplifier whole", "loads $.loads[2]"), asked.all);
        }
    }

    @Test
    void followsEditsAndCountsProblems() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            NavigatorComposite navigator = stage.show(
                    shell -> new NavigatorComposite(shell, stage.desk, new SectionPages(List.of()), new Asked()));
            Tree tree = stage.find("navigator.tree", Tree.class);
            stage.desk
                    .session()
                    .orElseThrow()
                    .edit(
                            "Set supply highest output",
                            project -> project.withBench(project.bench()
                                    .withSupply(project.bench().supply().withHighestVolts(14))));
            stage.problemAt("$.plan[3].supplyVolts");
            String plan = tree.getItem(0).getItem(4).getText();
            // Of the plan's 32 steps, those at 14.4 V are out of the supply's range.
            long high = stage.project().plan().stream()
                    .filter(step -> step.supplyVolts() > 14)
                    .count();
            assertTrue(plan.endsWith(high + " errors"), plan);
            navigator.select("$.plan[3].supplyVolts");
            assertEquals("stereo-8ohm-14V4", tree.getSelection()[0].getText());
            stage.desk.session().orElseThrow().edit("Set project title", project -> project.withTitle("New"));
            stage.pump();
            assertEquals("New", tree.getItem(0).getText());
            assertEquals("stereo-8ohm-14V4", tree.getSelection()[0].getText());
        }
    }
}
