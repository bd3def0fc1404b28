// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.ArchiveNote;
import org.ohmstead.testlog.TestLog;

class AuditTest {
    @TempDir
    Path folder;

    @TempDir
    Path otherFolder;

    private Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(folder);
    }

    @AfterEach
    void tearDown() {
        bench.close();
    }

    private void show() {
        new AuditComposite(bench.shell, bench.desk);
        bench.shell.open();
        bench.settle();
    }

    private String text(String id) {
        return bench.find(id, Label.class).getText();
    }

    @Test
    void explainsTheChainAtTheExampleOfThisLog() throws Exception {
        bench.withLog(Samples.six()).open();
        show();
        String head = bench.desk.log().headHash();
        assertTrue(text("audit.example").contains("R0006 has the hash " + head.substring(0, 8)), text("audit.example"));
        assertTrue(text("audit.example").contains("of R0005 before it"), text("audit.example"));
        assertTrue(text("audit.chains").contains("it holds one chain"), text("audit.chains"));
        assertEquals(head, bench.find("audit.heads", Table.class).getItem(0).getText(3));
    }

    @Test
    void itsPartsStandOneBelowTheOtherAtAnyWidth() throws Exception {
        bench.withLog(Samples.six()).open();
        show();
        int wide = assertParts();
        bench.shell.setSize(420, 600);
        bench.settle();
        int narrow = assertParts();
        assertTrue(narrow > wide, "narrow text needs more lines: " + narrow + " against " + wide);
    }

    /** Returns the height that is scrolled. */
    private int assertParts() {
        ScrolledComposite page = bench.find("audit.page", ScrolledComposite.class);
        int bottom = 0;
        for (Control part : ((Composite) page.getContent()).getChildren()) {
            if (part.isVisible()) {
                Rectangle place = part.getBounds();
                assertTrue(place.y > bottom && place.height > 0, part + " lies at " + place + ", below " + bottom);
                assertTrue(place.x + place.width <= page.getClientArea().width, part + " lies at " + place);
                bottom = place.y + place.height;
            }
        }
        assertTrue(page.getMinHeight() > bottom, page.getMinHeight() + " for " + bottom);
        return bottom;
    }

    @Test
    void namesTheFirstBadEntryAndLeadsToIt() throws Exception {
        bench.withLog(Samples.six()).open();
        show();
        bench.select(bench.find("audit.verify", Button.class));
        assertTrue(text("audit.result").startsWith("Whole: all 6 entries checked"), text("audit.result"));
        assertFalse(bench.find("audit.show", Button.class).isEnabled());
        Tampering.changeThird(bench.logFile());
        bench.select(bench.find("audit.verify", Button.class));
        assertTrue(text("audit.result").startsWith("Not whole: "), text("audit.result"));
        assertTrue(text("audit.faults").contains("R0003"), text("audit.faults"));
        bench.select(bench.find("audit.show", Button.class));
        assertEquals("R0003", bench.desk.chosenEntry().orElseThrow().id());
    }

    @Test
    void aHeadThatWasNotedElsewhereIsLookedFor() throws Exception {
        bench.withLog(Samples.six()).open();
        show();
        Text expected = bench.find("audit.expected", Text.class);
        expected.setText(bench.desk.log().entries().get(2).hash());
        bench.select(bench.find("audit.verify", Button.class));
        assertTrue(text("audit.result").endsWith("The head that you noted is in it."), text("audit.result"));
        expected.setText("ab".repeat(32));
        bench.select(bench.find("audit.verify", Button.class));
        assertTrue(text("audit.result").startsWith("Not whole: "), text("audit.result"));
    }

    @Test
    void showsWhichChainsJoinedAndWhatWasArchived() throws Exception {
        bench.withLog(Samples.six());
        try (TestLog log = TestLog.open(bench.logFile());
                TestLog other = TestLog.open(otherFolder.resolve(TestLog.FILE_NAME))) {
            other.append(Samples.six().get(0));
            other.append(Samples.six().get(1));
            log.join(other, "North bench", "N. N.");
            log.archive(new ArchiveNote("larkspur.zip", "ab".repeat(32), log.headHash(), List.of(), "M. M."));
        }
        bench.open();
        show();
        Table heads = bench.find("audit.heads", Table.class);
        assertEquals(2, heads.getItemCount());
        assertEquals("B, North bench", heads.getItem(1).getText(0));
        assertEquals("2", heads.getItem(1).getText(1));
        assertTrue(
                heads.getItem(1).getText(2).contains("by N. N."),
                heads.getItem(1).getText(2));
        assertTrue(text("audit.archives").contains("larkspur.zip"), text("audit.archives"));
        bench.select(bench.find("audit.copy", Button.class));
        Clipboard clipboard = new Clipboard(bench.display);
        try {
            String copied = (String) clipboard.getContents(TextTransfer.getInstance());
            assertTrue(copied.contains("B, North bench, 2 entries: "), copied);
        } finally {
            clipboard.dispose();
        }
    }

    @Test
    void missingCapturesAreReported() throws Exception {
        bench.withLog(Samples.six()).open();
        show();
        bench.select(bench.find("audit.captures.check", Button.class));
        assertTrue(text("audit.captures").startsWith("Captures: 1 missing."), text("audit.captures"));
        assertTrue(text("audit.captures").contains("a.wav"), text("audit.captures"));
    }

    @Test
    void standsWithoutAProject() {
        show();
        assertTrue(text("audit.result").startsWith("No project is open."), text("audit.result"));
        assertFalse(bench.find("audit.verify", Button.class).isEnabled());
        assertTrue(text("audit.shared").startsWith("The project keeps its log only in its own folder."));
    }

    @Test
    void aClockThatWentBackIsToldAndIsNoFault() throws Exception {
        FutureLog.write(bench.logFile());
        bench.withLog(Samples.six()).open();
        show();
        assertFalse(bench.find("audit.clock", Label.class).isVisible());
        bench.select(bench.find("audit.verify", Button.class));
        assertTrue(text("audit.result").startsWith("Whole: all 7 entries checked"), text("audit.result"));
        assertTrue(bench.find("audit.clock", Label.class).isVisible());
        assertTrue(
                text("audit.clock").startsWith("The entry R0001, number 2 of the log, says that it was added at"),
                text("audit.clock"));
        assertEquals("", text("audit.faults"));
    }
}
