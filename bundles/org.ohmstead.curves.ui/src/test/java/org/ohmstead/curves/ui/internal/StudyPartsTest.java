// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
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
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Scale;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.SetAside;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectSession;

/** What stands beside and below the chart. */
class StudyPartsTest {
    @TempDir
    Path folder;

    private Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(folder);
    }

    @AfterEach
    void tearDown() {
        bench.desk.setDisplay(DisplaySettings.USUAL);
        bench.close();
    }

    private void studied() throws Exception {
        bench.withLog(Samples.many()).open().show();
        bench.until(
                "the study is shown",
                () -> Ids.exists(bench.shell, "power.readings")
                        && table("readings").getItemCount() > 0);
    }

    private Table table(String name) {
        return bench.find("power." + name, Table.class);
    }

    private Text text(String name) {
        return bench.find("power." + name, Text.class);
    }

    private String words(String name) {
        return bench.find("power." + name, StyledText.class).getText();
    }

    private Button button(String name) {
        return bench.find("power." + name, Button.class);
    }

    private ChartCanvas chart() {
        return bench.find("power.chart", ChartCanvas.class);
    }

    /** Types a text and presses Enter. */
    private void type(Text field, String typed) {
        field.setText(typed);
        field.notifyListeners(SWT.DefaultSelection, new Event());
        bench.settle();
    }

    private static double number(String text) {
        String first = text.replace("(", "").replace(',', '.');
        int end = first.indexOf('\u00a0');
        return Double.parseDouble(end < 0 ? first : first.substring(0, end));
    }

    private ProjectSession session() {
        return bench.desk.session().orElseThrow();
    }

    @Test
    void saysWhatTheReadingsMean() throws Exception {
        studied();
        assertTrue(words("findings").contains("Unregulated: power follows the supply"), words("findings"));
        assertTrue(words("findings").contains("Models compared"), words("findings"));
        assertEquals(3, table("parameters").getItemCount());
        assertEquals(18, table("residuals").getItemCount());
        assertEquals("Channel A", table("differences").getItem(0).getText(0));
    }

    @Test
    void theLineReadsOutAllLoads() throws Exception {
        studied();
        boolean[] drawn = new boolean[1];
        chart().whenDrawn(() -> drawn[0] = true);
        bench.until("the chart is drawn", () -> drawn[0]);
        assertEquals(13.8, chart().line().orElseThrow(), 1e-9);
        double[] before = powersAtLine();
        assertEquals(3, before.length);
        Control pane = chart().getChildren()[0];
        Event key = new Event();
        key.character = ',';
        key.keyCode = ',';
        pane.notifyListeners(SWT.KeyDown, key);
        bench.settle();
        double supplyVolts = chart().line().orElseThrow();
        assertTrue(supplyVolts < 13.8 && supplyVolts > 13.7, "" + supplyVolts);
        assertEquals(supplyVolts, number(text("line.volts").getText()), 1e-9);
        double[] after = powersAtLine();
        for (int row = 0; row < after.length; row++) {
            assertTrue(after[row] < before[row], before[row] + " then " + after[row]);
        }
        type(text("line.volts"), "12.5");
        assertEquals(12.5, chart().line().orElseThrow(), 1e-9);
        double[] closed = {Samples.watts(12.5, 4), Samples.watts(12.5, 2), 4 * Samples.watts(12.5, 4)};
        double[] shown = powersAtLine();
        for (int row = 0; row < closed.length; row++) {
            // The channels differ by 1 %, and the joint curve lies between them.
            assertEquals(closed[row], shown[row], 0.012 * closed[row]);
        }
        type(text("line.volts"), "nothing");
        assertEquals("12.50", text("line.volts").getText());
    }

    private double[] powersAtLine() {
        double[] watts = new double[table("line").getItemCount()];
        for (int row = 0; row < watts.length; row++) {
            watts[row] = number(table("line").getItem(row).getText(1));
        }
        return watts;
    }

    @Test
    void whatIfFollowsItsFieldsAndSlides() throws Exception {
        studied();
        type(text("whatif.volts"), "13");
        type(text("whatif.ohms"), "2");
        Combo mode = bench.find("power.whatif.mode", Combo.class);
        mode.select(mode.indexOf("Stereo"));
        bench.select(mode);
        assertEquals(Samples.watts(13, 2), number(words("whatif.result")), 0.012 * Samples.watts(13, 2));
        assertEquals(13.0, chart().line().orElseThrow(), 1e-9);
        Scale volts = bench.find("power.whatif.volts.scale", Scale.class);
        volts.setSelection(volts.getMaximum());
        bench.select(volts);
        assertEquals("18.00", text("whatif.volts").getText());
        assertTrue(
                words("whatif.result").contains("Extrapolated: 3.6 V outside the readings."), words("whatif.result"));
        Scale ohms = bench.find("power.whatif.ohms.scale", Scale.class);
        ohms.setSelection(ohms.getMaximum());
        bench.select(ohms);
        assertEquals("16", text("whatif.ohms").getText());
    }

    @Test
    void theNormalisedTableHasTheVoltsThatAreWanted() throws Exception {
        studied();
        Table table = table("normalised");
        assertEquals("W at 14.4 V", table.getColumn(4).getText());
        type(text("normalised.volts"), "11.55 13");
        assertEquals(4, table.getColumnCount());
        assertEquals("W at 11.55 V", table.getColumn(1).getText());
        assertEquals(Samples.watts(13, 4), number(table.getItem(0).getText(2)), 0.012 * Samples.watts(13, 4));
        type(text("normalised.volts"), "all");
        assertTrue(bench.find("power.normalised.message", Label.class).getText().contains("voltages above zero"));
        assertEquals(4, table.getColumnCount());
        Event copy = new Event();
        copy.stateMask = SWT.MOD1;
        copy.keyCode = 'c';
        table.notifyListeners(SWT.KeyDown, copy);
        Clipboard clipboard = new Clipboard(bench.display);
        try {
            String copied = (String) clipboard.getContents(TextTransfer.getInstance());
            assertTrue(copied.startsWith("Load\tW at 11.55 V\tW at 13.0 V\tNote"), copied);
        } finally {
            clipboard.dispose();
        }
    }

    @Test
    void readingsAreSetAsideAndTakenBackWithUndo() throws Exception {
        studied();
        assertFalse(button("aside.commit").isEnabled());
        table("readings").setSelection(1);
        bench.select(table("readings"));
        assertEquals(Optional.of("R0002"), bench.desk.chosenEntry().map(LogEntry::id));
        assertFalse(button("aside.commit").isEnabled(), "a reason is wanted");
        text("aside.reason").setText("Supply sagged.");
        bench.select(button("aside.commit"));
        assertEquals(
                List.of(new SetAside("R0002", "Supply sagged.")),
                session().project().setAside());
        assertEquals(Optional.of("Set reading R0002 aside"), session().undoName());
        bench.until("the study is without it", () -> table("residuals").getItemCount() == 16);
        bench.until("the reason is shown", () -> "Supply sagged."
                .equals(table("readings").getItem(1).getText(5)));
        assertEquals("set aside", table("readings").getItem(1).getText(4));
        bench.select(button("aside.back"));
        assertEquals(Optional.of("Take reading R0002 back"), session().undoName());
        bench.until("the study has it again", () -> table("residuals").getItemCount() == 18);
        session().undo();
        bench.until("it is aside again", () -> table("residuals").getItemCount() == 16);
        session().undo();
        bench.until("it counts again", () -> table("residuals").getItemCount() == 18);
        assertEquals(List.of(), session().project().setAside());
    }

    @Test
    void whoMayOnlyReadIsToldSo() throws Exception {
        try (Bench other = new Bench(folder)) {
            other.withLog(Samples.many()).open();
            bench.open().show();
            bench.until(
                    "the study is shown",
                    () -> Ids.exists(bench.shell, "power.readings")
                            && table("readings").getItemCount() > 0);
            assertTrue(session().readOnly());
            table("readings").setSelection(0);
            bench.select(table("readings"));
            assertFalse(text("aside.reason").isEnabled());
            assertFalse(button("aside.commit").isEnabled());
            String said = bench.find("power.aside.message", Label.class).getText();
            assertTrue(said.contains("open for reading only"), said);
        }
    }

    @Test
    void aReadingChosenElsewhereIsSelected() throws Exception {
        studied();
        bench.desk.choose(bench.desk.log().entry("R0005"));
        bench.settle();
        assertEquals(
                "R0005",
                table("readings").getItem(table("readings").getSelectionIndex()).getText(0));
    }

    @Test
    void figuresFollowTheUsersDecimalSign() throws Exception {
        studied();
        String before = table("line").getItem(0).getText(1);
        bench.desk.setDisplay(new DisplaySettings(1, true));
        bench.until("the comma is there", () -> text("line.volts").getText().equals("13,80"));
        assertNotEquals(before, table("line").getItem(0).getText(1));
        bench.until(
                "the normalised table has it",
                () -> table("normalised").getColumn(2).getText().equals("W at 12,6 V"));
        assertTrue(words("whatif.result").contains("(k = 1)"), words("whatif.result"));
    }
}
