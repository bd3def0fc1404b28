// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Ids;

class HelpCompositeTest {
    private static final String POWER = FileHelpSource.ROOT + "help/power.html";
    private static final String LOG = FileHelpSource.ROOT + "help/log.html";

    private static final int PATIENCE_SECONDS = 10;
    private static final int TICK_MILLISECONDS = 10;

    private final Display display = Display.getDefault();
    private final DirectWork work = new DirectWork();
    private Shell shell;
    private HelpComposite help;

    @BeforeEach
    void open() {
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        help = new HelpComposite(shell, work, new FileHelpSource());
        shell.setSize(1000, 700);
        shell.open();
        pump();
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    @Test
    void showsTheFirstPageOnceTheHelpIsRead() {
        assertTrue(page().getText().contains("Reading the help"));

        work.finish();

        assertEquals("First steps", help.shownTitle());
        assertTrue(page().getText().startsWith("First steps\nTen minutes with the demo"));
        assertEquals("First steps", tree().getSelection()[0].getText());
    }

    @Test
    void showsEveryPageWholly() {
        work.finish();
        for (HelpPage each : HelpLibrary.read(new FileHelpSource()).pages()) {
            help.showTopic(each.href());
            pump();

            assertEquals(each.title(), help.shownTitle());
            assertEquals(each.title(), tree().getSelection()[0].getText());
            for (HelpBlock block : each.blocks()) {
                if (block instanceof HelpBlock.Text text) {
                    assertTrue(page().getText().contains(text.plainText()), text.plainText());
                }
            }
        }
    }

    @Test
    void showsWhatWasAskedForBeforeTheHelpWasRead() {
        help.showTopic(POWER);
        work.finish();

        assertEquals("Power against supply voltage", help.shownTitle());
    }

    @Test
    void followsALinkByMouseAndGoesBack() {
        work.finish();
        help.showTopic(LOG);
        pump();
        int link = page().getText().indexOf("The capture view");
        page().setTopIndex(page().getLineAtOffset(link));
        Rectangle where = page().getTextBounds(link + 2, link + 2);
        click(where.x + where.width / 2, where.y + where.height / 2);

        assertEquals("The capture view", help.shownTitle());

        item("help.back").notifyListeners(SWT.Selection, new Event());
        assertEquals("The test log", help.shownTitle());
        assertTrue(item("help.forward").isEnabled());
    }

    @Test
    void followsALinkByKeyboard() {
        work.finish();
        help.showTopic(LOG);
        traverse();

        assertEquals("Two readings", page().getSelectionText());

        Event enter = new Event();
        enter.keyCode = SWT.CR;
        enter.character = SWT.CR;
        page().notifyListeners(SWT.KeyDown, enter);
        assertEquals("Two readings", help.shownTitle());
    }

    @Test
    void leavesThePageAfterTheLastLink() {
        work.finish();
        help.showTopic(LOG);

        assertFalse(traverse().doit, "to the first link");
        assertFalse(traverse().doit, "to the second link");
        assertFalse(traverse().doit, "to the third link");
        assertFalse(traverse().doit, "to the last link");
        assertTrue(traverse().doit, "out of the page");
    }

    @Test
    void listsAndMarksWhatASearchFinds() {
        work.finish();
        search().setText("hydrogen");
        pump();

        assertTrue(page().getText().contains("Safety at the bench"));
        assertTrue(marked().contains("hydrogen"));

        search().notifyListeners(SWT.DefaultSelection, new Event());
        assertEquals("Safety at the bench", help.shownTitle());
        assertEquals(List.of("hydrogen"), marked());
    }

    @Test
    void returnsFromTheSearchWhenItsFieldIsEmptied() {
        work.finish();
        search().setText("fuse");
        search().setText("");

        assertEquals("First steps", help.shownTitle());
    }

    @Test
    void saysSoWhenNothingIsFound() {
        work.finish();
        help.search("xylophone");

        assertTrue(page().getText().contains("Nothing was found."));
    }

    @Test
    void showsAContextWithPagesThatSayMore() {
        work.finish();
        help.showContext("Test log", "All readings.", List.of(HelpTopic.page("The test log", LOG)));

        assertTrue(page().getText().startsWith("Test log\nAll readings.\nMore about it"));
        traverse();
        assertEquals("The test log", page().getSelectionText());
    }

    @Test
    void saysSoWhenAPageIsMissing() {
        work.finish();
        help.showTopic("/org.ohmstead.app/help/none.html");

        assertEquals("No such page", help.shownTitle());
    }

    @Test
    void growsAndShrinksTheText() {
        work.finish();
        int usual = page().getFont().getFontData()[0].getHeight();
        for (int i = 0; i < 4; i++) {
            item("help.larger").notifyListeners(SWT.Selection, new Event());
        }
        assertTrue(page().getFont().getFontData()[0].getHeight() > usual);

        for (int i = 0; i < 40; i++) {
            item("help.smaller").notifyListeners(SWT.Selection, new Event());
        }
        int smallest = page().getFont().getFontData()[0].getHeight();
        assertTrue(smallest < usual && smallest >= 5);
    }

    @Test
    void putsTheContentsAboveThePageWhenNarrow() {
        work.finish();
        shell.setSize(400, 700);
        waitUntil(() -> tree().toDisplay(0, 0).y + tree().getSize().y <= page().toDisplay(0, 0).y);

        assertTrue(page().getSize().x > 300, "the page has the whole width");
    }

    @Test
    void saysWhatWentWrongWhenNothingCanBeRead() {
        HelpComposite broken = new HelpComposite(shell, work, new Broken());
        work.finish();

        assertTrue(Ids.find(broken, "help.page", StyledText.class).getText().contains("The contents are gone."));
    }

    private Event traverse() {
        Event tab = new Event();
        tab.detail = SWT.TRAVERSE_TAB_NEXT;
        tab.doit = true;
        page().notifyListeners(SWT.Traverse, tab);
        return tab;
    }

    private void click(int x, int y) {
        for (int type : new int[] {SWT.MouseDown, SWT.MouseUp}) {
            Event event = new Event();
            event.button = 1;
            event.count = 1;
            event.x = x;
            event.y = y;
            page().notifyListeners(type, event);
        }
    }

    private List<String> marked() {
        List<StyleRange> ranges = List.of(page().getStyleRanges());
        return ranges.stream()
                .filter(range -> range.background != null)
                .map(range -> page().getTextRange(range.start, range.length))
                .toList();
    }

    private StyledText page() {
        return Ids.find(help, "help.page", StyledText.class);
    }

    private Tree tree() {
        return Ids.find(help, "help.contents", Tree.class);
    }

    private Text search() {
        return Ids.find(help, "help.search", Text.class);
    }

    private ToolItem item(String id) {
        return Ids.find(help, id, ToolItem.class);
    }

    private void waitUntil(BooleanSupplier condition) {
        long deadline = System.nanoTime() + PATIENCE_SECONDS * 1_000_000_000L;
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < deadline, "it took too long");
            if (!display.readAndDispatch()) {
                display.timerExec(TICK_MILLISECONDS, () -> {});
                display.sleep();
            }
        }
    }

    private void pump() {
        int most = 10_000;
        while (display.readAndDispatch() && most > 0) {
            most--;
        }
    }

    private static final class Broken implements HelpSource {
        @Override
        public List<HelpTopic> contents() {
            throw new IllegalStateException("The contents are gone.");
        }

        @Override
        public InputStream open(String href) throws IOException {
            throw new IOException(href);
        }
    }

    @Test
    void servesTheGermanPagesInGerman() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "de");
            shell.dispose();
            open();
            assertTrue(page().getText().contains("Die Hilfe wird gelesen"), page().getText());
            work.finish();
            assertTrue(page().getText().startsWith("Erste Schritte\nZehn Minuten mit der Demo"), page().getText());
            assertEquals("Erste Schritte", tree().getSelection()[0].getText());
            help.showTopic(FileHelpSource.ROOT + "help/gain.html");
            assertEquals("Verstärkung einstellen", help.shownTitle());
            assertTrue(page().getText().contains("\nVorsicht: Lautsprecher abklemmen"), page().getText());
            help.search("wasserstoff");
            assertTrue(page().getText().contains("Sicherheit am Messplatz\n"), page().getText());
            help.search("zzz");
            assertEquals("Seiten mit „zzz“", help.shownTitle());
            assertTrue(page().getText().contains("Nichts gefunden."), page().getText());
        } finally {
            restore(before);
        }
    }

    private static void restore(String language) {
        if (language == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, language);
        }
    }
}
