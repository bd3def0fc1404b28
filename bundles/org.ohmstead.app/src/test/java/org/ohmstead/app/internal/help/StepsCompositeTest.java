// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Ids;

class StepsCompositeTest {
    private static final String FIRST_TEST = FileHelpSource.ROOT + "cheatsheets/first-test.xml";

    private final Shell shell = new Shell(Display.getDefault());
    private final List<String> run = new ArrayList<>();
    private final List<BitSet> kept = new ArrayList<>();

    @AfterEach
    void close() {
        shell.dispose();
    }

    private static StepSheet firstTest(Locale language) throws IOException, HelpException {
        try (InputStream content = new FileHelpSource(language).open(FIRST_TEST)) {
            return Language.speaking(language, () -> StepSheet.read(FIRST_TEST, content));
        }
    }

    private StyledText open(BitSet done) throws IOException, HelpException {
        shell.setLayout(new FillLayout());
        new StepsComposite(shell, firstTest(Locale.ENGLISH), done, run::add, kept::add);
        shell.setSize(600, 800);
        shell.open();
        return Ids.find(shell, "help.page", StyledText.class);
    }

    /** Follows the first link with these words after a place, by keyboard as a reader would. */
    private static void follow(StyledText page, String after, String words) {
        int from = page.getText().indexOf(words, page.getText().indexOf(after));
        assertTrue(from >= 0, page.getText());
        page.setSelection(from, from + words.length());
        Event enter = new Event();
        enter.keyCode = SWT.CR;
        page.notifyListeners(SWT.KeyDown, enter);
    }

    @Test
    void showsEachStepWithWhatItOpens() throws IOException, HelpException {
        String text = open(new BitSet()).getText();
        assertTrue(text.startsWith("From the amplifier on the table to the sheet in hand\nA first test"), text);
        assertTrue(text.contains("\nCaution: Before you begin: take the loudspeakers off."), text);
        assertTrue(text.contains("\n1. Begin a project\n"), text);
        assertTrue(text.contains("\n→\tMake a project of your own\n→\tOr open the demo\n☐\tTick it off\n"), text);
        assertTrue(text.contains("\n11. Take the sheet in hand\n"), text);
    }

    @Test
    void runsTheCommandOfALink() throws IOException, HelpException {
        StyledText page = open(new BitSet());
        follow(page, "1. Begin a project", "Or open the demo");
        follow(page, "4. Make the loads", "Open it");
        assertEquals(
                List.of(
                        "org.ohmstead.workbench.demo",
                        "org.eclipse.ui.views.showView(org.eclipse.ui.views.showView.viewId=org.ohmstead.load.ui.design)"),
                run);
    }

    @Test
    void ticksAStepOffAndTakesTheTickAway() throws IOException, HelpException {
        BitSet first = new BitSet();
        first.set(0);
        StyledText page = open(first);
        assertTrue(page.getText().contains("\n1. Begin a project ✓\n"), page.getText());

        follow(page, "2. Describe the amplifier", "Tick it off");
        assertTrue(page.getText().contains("\n2. Describe the amplifier ✓\n"), page.getText());

        follow(page, "1. Begin a project", "Take the tick away");
        assertTrue(page.getText().contains("\n1. Begin a project\n"), page.getText());
        BitSet second = new BitSet();
        second.set(1);
        assertEquals(second, kept.get(1));
        assertEquals(2, kept.size());
        assertTrue(run.isEmpty(), "a tick opens nothing");
    }

    @Test
    void speaksGermanAndWarnsThereToo() throws IOException, HelpException {
        StepSheet german = firstTest(Locale.GERMAN);
        HelpPage page = Language.speaking(Locale.GERMAN, () -> german.page(step -> step == 0));
        assertEquals("Vom Verstärker auf dem Tisch zum Blatt in der Hand", page.title());
        assertTrue(page.blocks().stream()
                .anyMatch(block -> block instanceof HelpBlock.Text text
                        && text.kind() == HelpBlock.Kind.CAUTION
                        && text.plainText().contains("Lautsprecher abklemmen")));
        List<String> words = page.blocks().stream().map(HelpBlock::plainText).toList();
        assertTrue(words.contains("1. Ein Projekt beginnen ✓"), words.toString());
        assertTrue(words.contains("Haken wegnehmen"), words.toString());
        assertTrue(words.contains("Öffnen"), words.toString());
        assertFalse(words.contains("Open it"), words.toString());
    }

    @Test
    void saysWhichSheetCannotBeRead() {
        InputStream broken = new ByteArrayInputStream(
                "<cheatsheet title='x'><item title='Sink'/></cheatsheet>".getBytes(StandardCharsets.UTF_8));
        HelpException failure = assertThrows(HelpException.class, () -> StepSheet.read("x.xml", broken));
        assertTrue(failure.getMessage().contains("x.xml"), failure.getMessage());
        assertTrue(failure.getMessage().contains("“Sink” has no description"), failure.getMessage());
    }
}
