// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.report.SheetPages;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Ids;

/** The form of the sheet that the user chooses, and the view in German. */
class SheetChoiceTest extends SheetStage {
    private void choose(String id, String words) {
        Combo combo = Ids.find(view, id, Combo.class);
        combo.select(List.of(combo.getItems()).indexOf(words));
        combo.notifyListeners(SWT.Selection, new Event());
    }

    @Test
    void showsAndPublishesTheFormThatIsChosen() throws Exception {
        openAndSettle();
        assertEquals(
                "Full report",
                Ids.find(view, "sheet.choice.design", Combo.class).getText());
        assertEquals("A4", Ids.find(view, "sheet.choice.paper", Combo.class).getText());
        assertTrue(view.pages().pageCount() > 1);
        choose("sheet.choice.design", "Bench sheet");
        choose("sheet.choice.paper", "Letter");
        choose("sheet.choice.language", "Deutsch");
        assertTrue(label("sheet.state").startsWith("Out of date"), label("sheet.state"));
        until(view::settled, "the bench sheet is shown");
        assertEquals(1, view.pages().pageCount());
        assertTrue(label("sheet.conclusion").startsWith("6 ratings:"), "the workbench keeps its language");
        assertFalse(desk.session().orElseThrow().dirty(), "the project's own setting stays");
        press("sheet.publish");
        until(() -> has("sheet.folder"), "it is published");
        List<Path> published = files(project.resolve("sheets"));
        assertEquals(2, published.size());
        assertTrue(published.get(0).toString().endsWith("-bench-de.html"), published.toString());
        assertTrue(Files.readString(published.get(0)).contains("lang=\"de\""));
        try (SheetPages pdf = SheetPages.open(published.get(1))) {
            // ANSI/ASME Y14.1: 8.5 in wide.
            assertEquals(612, pdf.size(0).widthPoints(), 0.5);
        }
        desk.session().orElseThrow().edit("Lay out", SheetChoiceTest::asHandout);
        assertEquals(
                "Handout", Ids.find(view, "sheet.choice.design", Combo.class).getText());
        assertEquals("Letter", Ids.find(view, "sheet.choice.paper", Combo.class).getText());
    }

    private static Project asHandout(Project project) {
        return project.withSheet(
                project.sheet().withLayout(project.sheet().layout().withDesign(SheetDesign.HANDOUT)));
    }

    @Test
    void speaksGerman() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "de");
            view.dispose();
            view = new SheetComposite(
                    shell,
                    desk,
                    new SheetMaker("0.1.0", Clock.fixed(Instant.parse("2026-04-05T06:07:08Z"), ZoneOffset.UTC)),
                    opened::add);
            shell.layout();
            assertTrue(label("sheet.empty").startsWith("Kein Projekt ist ge\u00f6ffnet."));
            openAndSettle();
            Table ratings = Ids.find(view, "sheet.ratings", Table.class);
            assertEquals("Urteil", ratings.getColumn(0).getText());
            assertEquals("nicht erf\u00fcllt", ratings.getItem(2).getText(0));
            assertTrue(label("sheet.conclusion").startsWith("6 Angaben: 1\u00a0erf\u00fcllt"));
            assertEquals("Aktuell.", label("sheet.state"));
            assertEquals("Seite 1 von " + view.pages().pageCount(), label("sheet.page"));
            assertEquals(
                    "Deutsch",
                    Ids.find(view, "sheet.choice.language", Combo.class).getText());
            press("sheet.publish");
            until(() -> has("sheet.folder"), "it is published");
            assertTrue(notice().endsWith(" ver\u00f6ffentlicht."), notice());
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }
}
