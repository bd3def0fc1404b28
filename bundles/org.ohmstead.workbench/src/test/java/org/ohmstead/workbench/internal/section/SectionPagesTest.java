// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolItem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

class SectionPagesTest {
    @TempDir
    Path temp;

    /** A page of a third party that fails wherever it can. */
    private record Faulty(String id, String where) implements SectionPage {
        @Override
        public String name() {
            return "Cooling";
        }

        @Override
        public int order() {
            return 150;
        }

        @Override
        public String iconName() {
            return "no-such-icon";
        }

        @Override
        public String summary(Project project) {
            throw new IllegalStateException("The fan is off");
        }

        @Override
        public List<SectionItem> items(Project project) {
            throw new IllegalStateException("The fan is off");
        }

        @Override
        public SectionControl create(Composite parent, ProjectDesk desk) {
            new Button(parent, SWT.PUSH).setText("half made");
            throw new IllegalStateException("The fan is off");
        }
    }

    @Test
    void putsThePagesInOrderAndTheFirstOfTwoEqualIdsStays() {
        SectionPages pages =
                new SectionPages(List.of(new Faulty("acme.cooling", "$.amplifier.heatSink"), new Faulty("plan", "$")));
        assertEquals(
                List.of("amplifier", "acme.cooling", "bench", "parts", "loads", "plan", "sheet", "checks", "sharedlog"),
                pages.all().stream().map(SectionPage::id).toList());
        assertEquals("Plan", pages.page("plan").orElseThrow().name());
    }

    @Test
    void findsThePageOfAPlaceByItsLongestPath() {
        SectionPages pages = new SectionPages(List.of(new Faulty("acme.cooling", "$.amplifier.notes")));
        assertEquals(
                Optional.of("acme.cooling"), pages.pageFor("$.amplifier.notes").map(SectionPage::id));
        assertEquals(
                Optional.of("amplifier"), pages.pageFor("$.amplifier.notesX").map(SectionPage::id));
        assertEquals(
                Optional.of("parts"), pages.pageFor("$.bench.parts[1].ohms").map(SectionPage::id));
        assertEquals(Optional.of("bench"), pages.pageFor("$.bench.meters[0]").map(SectionPage::id));
        assertEquals(Optional.of("sheet"), pages.pageFor("$.title").map(SectionPage::id));
        assertEquals(
                Optional.of("checks"),
                pages.pageFor("$.checkStandards[0].stepId").map(SectionPage::id));
        assertEquals(Optional.of("sharedlog"), pages.pageFor("$.sharedLog.host").map(SectionPage::id));
        assertEquals(Optional.empty(), pages.pageFor("log.db"));
    }

    @Test
    void showsAPageThatThrowsAsFailedAndGoesOn() throws Exception {
        SectionPages pages = new SectionPages(List.of(new Faulty("acme.cooling", "$.cooling")));
        SectionPage failed = pages.page("acme.cooling").orElseThrow();
        try (SectionStage stage = SectionStage.open(temp)) {
            assertEquals("section", failed.iconName());
            assertEquals("failed", failed.summary(stage.project()));
            assertEquals(List.of(), failed.items(stage.project()));
            stage.show(failed);
            assertEquals(1, stage.shell.getChildren().length, "what was half made is gone");
            assertEquals(
                    "The page \"Cooling\" could not be shown. The fan is off.",
                    stage.find("section.failed.sentence", Label.class).getText());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {700, 1400})
    void everyPageFitsNarrowAndWideWindows(int width) throws Exception {
        for (SectionPage page : new SectionPages(List.of()).all()) {
            try (SectionStage stage = SectionStage.open(temp.resolve(page.id()))) {
                stage.shell.setSize(width, 800);
                stage.show(page);
                Composite root = (Composite) stage.shell.getChildren()[0];
                assertSame(page.id(), root.getData("ohmstead.id"));
                assertEquals(stage.shell.getClientArea().width, root.getSize().x, page.id());
                assertFalse(((GuardedPage) page).failure().isPresent(), page.id());
                assertInside(root);
            }
        }
    }

    private static void assertInside(Composite parent) {
        for (var child : parent.getChildren()) {
            int right = child.getBounds().x + child.getBounds().width;
            boolean form = child instanceof Composite || child instanceof Text;
            if (form && child.isVisible() && !(parent instanceof org.eclipse.swt.widgets.Table)) {
                assertTrue(right <= parent.getClientArea().width + 1, child + " ends at " + right);
            }
            if (child instanceof Composite composite) {
                assertInside(composite);
            }
        }
    }

    @Test
    void aProjectThatIsOpenElsewhereCanBeReadOnly() throws Exception {
        try (SectionStage stage = SectionStage.closed(temp)) {
            ProjectSession other = ProjectSession.open(stage.folder, Clock.systemUTC());
            assertFalse(other.readOnly());
            stage.openProject();
            assertTrue(stage.desk.session().orElseThrow().readOnly());
            stage.show(new AmplifierPage());
            assertTrue(stage.find("amplifier.readonly", Label.class).isVisible());
            assertFalse(stage.find("amplifier.readonly", Label.class).getText().isEmpty());
            assertFalse(stage.find("amplifier.maker", Text.class).getEditable());
            assertFalse(stage.find("ratings.add", ToolItem.class).isEnabled());
            Project before = stage.project();
            stage.edit("ratings", 0, "powerWatts", "1");
            assertEquals(before, stage.project());
        }
    }

    @Test
    void saysWhatToDoWhileNoProjectIsOpen() throws Exception {
        try (SectionStage stage = SectionStage.closed(temp)) {
            stage.show(new PlanPage());
            assertTrue(stage.find("plan.closed", Label.class).isVisible());
            stage.openProject();
            stage.pump();
            assertFalse(stage.find("plan.closed", Label.class).isVisible());
            assertEquals(32, stage.table("steps").getItemCount());
        }
    }
}
