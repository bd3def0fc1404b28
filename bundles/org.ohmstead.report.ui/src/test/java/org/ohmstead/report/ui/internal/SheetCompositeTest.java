// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Project;
import org.ohmstead.report.SheetPages;
import org.ohmstead.workbench.look.Ids;

class SheetCompositeTest extends SheetStage {
    private static Project renamed(Project project) {
        return new Project(
                project.title() + " again",
                project.amplifier(),
                project.bench(),
                project.loads(),
                project.plan(),
                project.sheet());
    }

    @Test
    void saysWhatToDoWithoutAProjectAndWithoutReadings() throws Exception {
        assertTrue(label("sheet.empty").contains("No project is open."));
        assertFalse(Ids.find(view, "sheet.publish", Button.class).isEnabled());
        Files.delete(project.resolve("log.db"));
        openProject();
        until(() -> label("sheet.empty").contains("No readings yet"), "it says that there are no readings");
    }

    @Test
    void showsVerdictsAndPagesOfTheProject() {
        openAndSettle();
        // The demo's 4-ohm rating is below what its simulated amplifier gives, the bridged one above.
        Table ratings = Ids.find(view, "sheet.ratings", Table.class);
        assertEquals(6, ratings.getItemCount());
        assertEquals("meets", ratings.getItem(0).getText(0));
        assertEquals("falls short", ratings.getItem(2).getText(0));
        assertEquals("not tested", ratings.getItem(1).getText(0));
        assertTrue(
                ratings.getItem(0).getText(4).matches("97\\.\\d+\u00a0\u00b1\u00a0\\d\\.\\d+"),
                ratings.getItem(0).getText(4));
        assertTrue(label("sheet.conclusion").startsWith("6 ratings: 1\u00a0is met, 1\u00a0falls short"));
        assertEquals("Up to date.", label("sheet.state"));
        assertEquals("Page 1 of " + view.pages().pageCount(), label("sheet.page"));
        assertTrue(view.pages().pageCount() > 1);
    }

    @Test
    void drawsPagesAndNotBlankPaper() {
        openAndSettle();
        until(view::settled, "the pages are drawn");
        // The screen shows a frame some time after it was drawn.
        until(() -> darkPixels() > 200, "the letters of a page are seen");
    }

    /** Returns how many of a quarter of the pixels of the pages are dark, on the screen as it is now. */
    private int darkPixels() {
        Rectangle area = view.pages().control().getClientArea();
        Image image = new Image(display, area.width, area.height);
        GC gc = new GC(view.pages().control());
        gc.copyArea(image, 0, 0);
        gc.dispose();
        ImageData data = image.getImageData();
        image.dispose();
        int dark = 0;
        for (int y = 0; y < data.height; y += 2) {
            for (int x = 0; x < data.width; x += 2) {
                RGB rgb = data.palette.getRGB(data.getPixel(x, y));
                dark += rgb.red + rgb.green + rgb.blue < 300 ? 1 : 0;
            }
        }
        return dark;
    }

    @Test
    void movesThroughPagesAndSizesByKeys() {
        openAndSettle();
        key(SWT.END, 0);
        assertEquals(view.pages().pageCount() - 1, view.pages().currentPage());
        key(SWT.HOME, 0);
        assertEquals(0, view.pages().currentPage());
        key(SWT.PAGE_DOWN, SWT.MOD1);
        assertEquals(1, view.pages().currentPage());
        key('0', SWT.MOD1);
        assertEquals(1, view.pages().factor());
        key('+', SWT.MOD1);
        assertEquals(1.25, view.pages().factor(), 1e-9);
        key('-', SWT.MOD1);
        key('-', SWT.MOD1);
        assertEquals(0.8, view.pages().factor(), 1e-9);
        until(view::settled, "the pages are drawn at their new size");
    }

    private void key(int code, int mask) {
        Event event = new Event();
        event.keyCode = code;
        event.stateMask = mask;
        view.pages().control().notifyListeners(SWT.KeyDown, event);
    }

    @Test
    void staysShownWhileItIsMadeAnewAndSaysThatItIsADraft() {
        openAndSettle();
        int pages = view.pages().pageCount();
        desk.session().orElseThrow().edit("Rename", SheetCompositeTest::renamed);
        assertTrue(label("sheet.state").startsWith("Out of date"), label("sheet.state"));
        assertEquals(pages, view.pages().pageCount());
        until(view::settled, "the sheet is made anew");
        assertTrue(label("sheet.state").startsWith("Draft"), label("sheet.state"));
    }

    @Test
    void publishesTheSavedProjectAndOffersItsFolder() throws Exception {
        openAndSettle();
        press("sheet.publish");
        until(() -> has("sheet.folder"), "it is published");
        assertTrue(notice().contains("sheet-2026-04-05-"), notice());
        Path sheets = project.resolve("sheets");
        assertEquals(2, files(sheets).size());
        press("sheet.folder");
        assertEquals(
                List.of(sheets.toRealPath()),
                opened.stream()
                        .map(Path::toAbsolutePath)
                        .map(SheetCompositeTest::real)
                        .toList());
    }

    private static Path real(Path path) {
        try {
            return path.toRealPath();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void asksInTheViewToSaveBeforePublishing() throws Exception {
        openAndSettle();
        desk.session().orElseThrow().edit("Rename", SheetCompositeTest::renamed);
        press("sheet.publish");
        assertTrue(notice().contains("not saved"), notice());
        assertFalse(Files.exists(project.resolve("sheets")));
        press("sheet.publish.save");
        until(() -> has("sheet.folder"), "it is saved and published");
        assertFalse(desk.session().orElseThrow().dirty());
        String html = Files.readString(files(project.resolve("sheets")).get(0));
        assertTrue(html.contains("again"), "the published sheet lacks the edit");
        assertFalse(html.contains("This sheet is a draft"));
        until(() -> view.settled() && label("sheet.state").equals("Up to date."), "the preview is no draft any more");
    }

    @Test
    void exportsWhatTheNameSays() throws Exception {
        openAndSettle();
        desk.session().orElseThrow().edit("Rename", SheetCompositeTest::renamed);
        for (String name : List.of("a.html", "b.pdf", "c.csv", "d.jsonl")) {
            Path file = folder.resolve(name);
            view.export(file);
            until(() -> notice().contains("Wrote " + file), name + " is written");
        }
        assertTrue(Files.readString(folder.resolve("a.html")).contains("This sheet is a draft"));
        try (SheetPages pdf = SheetPages.open(folder.resolve("b.pdf"))) {
            assertTrue(pdf.pageCount() > 1);
        }
        assertTrue(Files.readString(folder.resolve("c.csv")).startsWith("entry,"));
        assertEquals(STEPS.size(), Files.readAllLines(folder.resolve("d.jsonl")).size());
        view.export(folder.resolve("e.docx"));
        assertTrue(notice().contains("e.docx"), notice());
        assertFalse(Files.exists(folder.resolve("e.docx")));
    }

    @Test
    void saysWhyAnExportFailed() {
        openAndSettle();
        Path file = folder.resolve("no/such/folder/a.pdf");
        view.export(file);
        until(() -> notice().contains(file.toString()), "the failure is told");
    }

    @Test
    void publishesNothingFromALogThatWasChanged() throws Exception {
        Path log = project.resolve("log.db");
        String content = Files.readString(log, StandardCharsets.ISO_8859_1);
        String changed = content.replace("T. Est", "T. Xst");
        assertFalse(changed.equals(content));
        Files.writeString(log, changed, StandardCharsets.ISO_8859_1);
        openProject();
        until(
                () -> label("sheet.empty").contains("Restore it from a backup. Nothing is published"),
                "the view says that the log is broken");
        press("sheet.publish");
        assertTrue(notice().contains("Restore it from a backup. Nothing is published"), notice());
        assertFalse(Files.exists(project.resolve("sheets")));
        view.export(folder.resolve("log.csv"));
        until(() -> notice().startsWith("Wrote "), "the table of the log is written");
        assertTrue(notice().contains("cannot be relied on"), notice());
        assertTrue(Files.exists(folder.resolve("log.csv")));
        assertThrows(IllegalArgumentException.class, () -> Ids.find(view, "sheet.publish.save", Button.class));
    }

    @Test
    void mayBeDisposedWhileItsPartsAreMade() {
        openProject();
        view.dispose();
        for (int turns = 0; turns < 12; turns++) {
            view = new SheetComposite(shell, desk, "0.1.0");
            view.refreshIfStale();
            shell.layout();
            view.setFocus();
            for (int turn = 0; turn < turns; turn++) {
                display.readAndDispatch();
            }
            view.dispose();
            while (display.readAndDispatch()) {
                continue;
            }
            assertEquals(0, shell.getChildren().length);
        }
    }
}
