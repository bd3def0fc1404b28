// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.workbench.session.LogSnapshot.LogState;

class LogCompositeTest {
    @TempDir
    Path folder;

    private Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(folder);
    }

    @AfterEach
    void tearDown() {
        bench.close();
    }

    private Table table() {
        return bench.find("log.table", Table.class);
    }

    private String count() {
        return bench.find("log.filter.count", Label.class).getText();
    }

    private void choose(int row) {
        table().setSelection(row);
        bench.select(table());
    }

    private String details() {
        return bench.find("log.details", StyledText.class).getText();
    }

    @Test
    void saysWhatToDoWhenThereIsNothing() throws Exception {
        LogComposite composite = bench.show();
        assertTrue(bench.find("log.empty", Label.class).getText().contains("No project is open."));
        bench.withLog(List.of()).open();
        assertTrue(bench.find("log.empty", Label.class).getText().contains("Bench > Replay recordings"));
        assertFalse(composite.isDisposed());
    }

    @Test
    void showsTheEntriesThatAppearWhenAProjectIsOpened() throws Exception {
        bench.show();
        bench.withLog(Samples.six()).open();
        assertEquals(6, table().getItemCount());
        assertEquals("6 of 6", count());
        assertEquals("R0001", table().getItem(0).getText(0));
        assertEquals("325.0", table().getItem(5).getText(LogColumn.POWER.ordinal()));
    }

    @Test
    void typingInTheFilterChangesTheCount() throws Exception {
        bench.withLog(Samples.six()).open().show();
        bench.find("log.filter", Text.class).setText("bridged");
        bench.settle();
        assertEquals("2 of 6", count());
        assertEquals(2, table().getItemCount());
        bench.find("log.filter", Text.class).setText("");
        Combo load = bench.find("log.filter.load", Combo.class);
        assertEquals(List.of("Any load", "4 \u03a9", "2 \u03a9"), List.of(load.getItems()));
        load.select(2);
        bench.select(load);
        assertEquals("2 of 6", count());
        bench.select(bench.find("log.filter.clear", Button.class));
        assertEquals("6 of 6", count());
    }

    @Test
    void aClickOnAHeaderSorts() throws Exception {
        bench.withLog(Samples.six()).open().show();
        for (String first : List.of("R0001", "R0006")) {
            table().getColumn(LogColumn.POWER.ordinal()).notifyListeners(SWT.Selection, new Event());
            bench.settle();
            assertEquals(first, table().getItem(0).getText(0));
        }
        assertEquals(SWT.DOWN, table().getSortDirection());
    }

    @Test
    void choosingARowTellsTheDeskAndShowsTheDetails() throws Exception {
        bench.withLog(Samples.six()).open().show();
        choose(3);
        assertEquals("R0004", bench.desk.chosenEntry().orElseThrow().id());
        assertTrue(details().startsWith("R0004"), details());
        assertTrue(details().contains("Uncertainty budget"), details());
    }

    @Test
    void anEntryThatIsChosenElsewhereIsSelectedHere() throws Exception {
        bench.withLog(Samples.six()).open().show();
        bench.desk.choose(bench.desk.log().entry("R0005"));
        bench.settle();
        assertEquals(4, table().getSelectionIndex());
        assertTrue(details().startsWith("R0005"), details());
        bench.find("log.filter", Text.class).setText("stereo");
        bench.settle();
        assertEquals(0, table().getSelectionCount());
        assertTrue(details().contains("The filter hides this entry"), details());
    }

    @Test
    void voidingByTheWidgetsEndsInAVoidedEntryOfTheLog() throws Exception {
        bench.withLog(Samples.six()).open().show();
        assertFalse(bench.find("log.void", Button.class).isEnabled());
        choose(1);
        bench.select(bench.find("log.void", Button.class));
        Button commit = bench.find("log.void.commit", Button.class);
        assertTrue(commit.isVisible());
        assertFalse(commit.isEnabled());
        bench.find("log.void.reason", Text.class).setText("A lead was loose");
        assertFalse(commit.isEnabled(), "a name is needed too");
        bench.find("log.void.operator", Text.class).setText("N. N.");
        bench.select(commit);
        bench.until("the log was read anew", () -> bench.desk.log().entries().size() == 7);
        assertFalse(bench.find("log.void.panel", Composite.class).isVisible());
        assertEquals("voided", table().getItem(1).getText(1));
        assertTrue(details().contains("Voided by V"), details());
        try (TestLog log = TestLog.openReadOnly(bench.logFile())) {
            LogEntry entry = log.entry("R0002").orElseThrow();
            VoidNote note = entry.voidedBy().orElseThrow();
            assertEquals("A lead was loose", note.reason());
            assertEquals("N. N.", note.who());
            assertEquals(5, log.readings().size());
        }
        assertFalse(bench.find("log.void", Button.class).isEnabled(), "what is voided cannot be voided again");
        choose(2);
        bench.select(bench.find("log.void", Button.class));
        assertEquals("N. N.", bench.find("log.void.operator", Text.class).getText());
        assertEquals("", bench.find("log.void.reason", Text.class).getText());
    }

    @Test
    void severalEntriesAreVoidedTogether() throws Exception {
        bench.withLog(Samples.six()).open().show();
        table().setSelection(new int[] {0, 2, 5});
        bench.select(table());
        bench.select(bench.find("log.void", Button.class));
        bench.find("log.void.reason", Text.class).setText("Wrong load");
        bench.find("log.void.operator", Text.class).setText("N. N.");
        bench.select(bench.find("log.void.commit", Button.class));
        bench.until("all are voided", () -> bench.desk.log().validReadings().size() == 3);
        assertEquals(9, bench.desk.log().entries().size());
    }

    @Test
    void verifyingSaysThatTheLogIsWhole() throws Exception {
        bench.withLog(Samples.six()).open().show();
        bench.select(bench.find("log.verify", Button.class));
        Label result = bench.find("log.verify.result", Label.class);
        bench.until("the log is verified", () -> !result.getText().startsWith("Verifying"));
        assertEquals(
                "Whole: all 6 entries checked, each one's content and its place in the chain are as written.",
                result.getText());
        String head = bench.desk.log().headHash();
        assertTrue(bench.find("log.head", Label.class).getText().contains(head.substring(0, 10)));
        assertTrue(bench.find("log.head", Label.class).getToolTipText().contains(head));
    }

    @Test
    void verifyingShowsTheFaultOfATamperedLogAndLeadsToTheEntry() throws Exception {
        bench.withLog(Samples.six()).open().show();
        Tampering.changeThird(bench.logFile());
        bench.select(bench.find("log.verify", Button.class));
        Label result = bench.find("log.verify.result", Label.class);
        bench.until("the log is verified", () -> !result.getText().startsWith("Verifying"));
        assertTrue(result.getText().startsWith("Not whole: "), result.getText());
        String expected = firstFault();
        assertTrue(
                bench.find("log.verify.fault", Label.class).getText().contains(expected),
                bench.find("log.verify.fault", Label.class).getText());
        bench.find("log.filter", Text.class).setText("bridged");
        bench.settle();
        bench.select(bench.find("log.verify.show", Button.class));
        assertEquals("R0003", bench.desk.chosenEntry().orElseThrow().id());
        assertEquals("6 of 6", count());
        assertEquals(2, table().getSelectionIndex());
    }

    @Test
    void aLogThatWasBrokenBeforeSaysSoAtOnce() throws Exception {
        bench.withLog(Samples.six());
        Tampering.changeThird(bench.logFile());
        bench.open().show();
        assertEquals(LogState.BROKEN, bench.desk.log().state());
        assertTrue(bench.find("log.verify.result", Label.class).getText().contains("not whole"));
    }

    private String firstFault() throws TestLogException {
        try (TestLog log = TestLog.openReadOnly(bench.logFile())) {
            return log.verify().faults().get(0).sentence();
        }
    }

    @Test
    void copiesTheSelectedRowsAsATable() throws Exception {
        bench.withLog(Samples.six()).open().show();
        table().setSelection(new int[] {0, 5});
        Event key = new Event();
        key.stateMask = SWT.MOD1;
        key.keyCode = 'c';
        table().notifyListeners(SWT.KeyDown, key);
        bench.settle();
        Clipboard clipboard = new Clipboard(bench.display);
        try {
            String text = (String) clipboard.getContents(TextTransfer.getInstance());
            List<String> lines = text.lines().toList();
            assertEquals(3, lines.size());
            assertTrue(lines.get(1).startsWith("R0001\tvalid\t"), text);
            assertTrue(lines.get(2).startsWith("R0006\tvalid\t"), text);
        } finally {
            clipboard.dispose();
        }
    }

    @Test
    void stopsListeningWhenItIsDisposed() throws Exception {
        LogComposite composite = bench.withLog(Samples.six()).open().show();
        composite.dispose();
        bench.desk.choose(bench.desk.log().entry("R0001"));
        bench.settle();
        assertEquals(Optional.of("R0001"), bench.desk.chosenEntry().map(LogEntry::id));
    }

    @Test
    void answersWhatIsAskedBeforeAllPartsAreThere() throws Exception {
        bench.withLog(Samples.six()).open();
        LogComposite composite = new LogComposite(bench.shell, bench.desk);
        bench.shell.open();
        composite.setFocus();
        bench.find("log.filter", Text.class).setText("bridged");
        bench.desk.choose(bench.desk.log().entry("R0006"));
        bench.settle();
        bench.until("the table has the focus", () -> table().isFocusControl());
        assertEquals("2 of 6", count());
        assertEquals(2, table().getItemCount());
        assertTrue(details().startsWith("R0006"), details());
    }

    @Test
    void mayBeDisposedWhileItsPartsAreMade() throws Exception {
        bench.withLog(Samples.six()).open();
        bench.desk.choose(bench.desk.log().entry("R0001"));
        bench.shell.open();
        for (int turns = 0; turns < 20; turns++) {
            LogComposite composite = new LogComposite(bench.shell, bench.desk);
            bench.shell.layout();
            composite.setFocus();
            for (int turn = 0; turn < turns; turn++) {
                bench.display.readAndDispatch();
            }
            composite.dispose();
            bench.settle();
            assertEquals(0, bench.shell.getChildren().length);
        }
    }
}
