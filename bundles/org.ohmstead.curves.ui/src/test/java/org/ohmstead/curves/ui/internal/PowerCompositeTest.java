// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Mode;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.session.DisplaySettings;

class PowerCompositeTest {
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

    private ChartCanvas chart() {
        return bench.find("power.chart", ChartCanvas.class);
    }

    private Table powers() {
        return bench.find("power.powers", Table.class);
    }

    private Table ratings() {
        return bench.find("power.ratings", Table.class);
    }

    private PowerComposite fitted() throws Exception {
        PowerComposite power = bench.withLog(Samples.many()).open().show();
        bench.until("the curves are fitted", () -> powers().getItemCount() > 0);
        return power;
    }

    private void drawn() {
        boolean[] done = new boolean[1];
        chart().whenDrawn(() -> done[0] = true);
        bench.until("the chart is drawn", () -> done[0]);
    }

    @Test
    void saysWhatToDoWhenThereIsNothing() throws Exception {
        bench.show();
        assertTrue(chart().message().orElse("").contains("No project is open."), chart().message()::toString);
        bench.withLog(List.of()).open();
        assertTrue(chart().message().orElse("").contains("Bench > Replay recordings"), chart().message()::toString);
    }

    @Test
    void showsCurvesVerdictsAndPowers() throws Exception {
        fitted();
        assertEquals(Optional.empty(), chart().message());
        // The demo's project has six ratings; its 8 ohm one fits no reading here.
        assertEquals(6, ratings().getItemCount());
        assertEquals("not tested", ratings().getItem(3).getText(0));
        assertEquals(2, powers().getItemCount());
        String text = powers().getItem(0).getText(2);
        double watts = Double.parseDouble(text.substring(0, text.indexOf('\u00a0')));
        assertEquals(0.99 * Samples.watts(12, 4), watts, 0.06);
    }

    @Test
    void theCursorReadsOutEveryLoad() throws Exception {
        fitted();
        drawn();
        chart().moveCursorTo(13.0);
        bench.settle();
        assertEquals("W at 13.00 V", powers().getColumn(CurveSheet.CURSOR).getText());
        for (int row = 0; row < 2; row++) {
            String text = powers().getItem(row).getText(CurveSheet.CURSOR);
            double watts = Double.parseDouble(text.substring(0, text.indexOf('\u00a0')));
            assertEquals(0.99 * Samples.watts(13, row == 0 ? 4 : 2), watts, 0.6, text);
        }
    }

    @Test
    void theSelectorsChooseTheCurves() throws Exception {
        fitted();
        Combo channel = bench.find("power.channel", Combo.class);
        channel.select(channel.indexOf("Every channel"));
        bench.select(channel);
        assertEquals(4, powers().getItemCount());
        Combo mode = bench.find("power.mode", Combo.class);
        mode.select(mode.indexOf("Bridged, 1\u00a0kHz"));
        bench.select(mode);
        assertEquals(1, powers().getItemCount());
        assertEquals("A+B", powers().getItem(0).getText(1));
    }

    @Test
    void aRatingLeadsToItsChart() throws Exception {
        fitted();
        ratings().setSelection(2);
        bench.select(ratings());
        assertTrue(bench.find("power.mode", Combo.class).getText().startsWith("Bridged"));
    }

    @Test
    void aClickOnAPointChoosesItsEntry() throws Exception {
        fitted();
        drawn();
        Control pane = pane(chart()).orElseThrow();
        // Nobody knows where the renderer puts a point: click along the pane until one is hit.
        for (int y = pane.getSize().y - 1; y > 0 && bench.desk.chosenEntry().isEmpty(); y -= 4) {
            for (int x = 0; x < pane.getSize().x && bench.desk.chosenEntry().isEmpty(); x += 4) {
                click(pane, x, y);
            }
        }
        LogEntry chosen = bench.desk.chosenEntry().orElseThrow();
        assertEquals(Mode.STEREO, chosen.reading().orElseThrow().mode());
    }

    private void click(Control pane, int x, int y) {
        Event event = new Event();
        event.x = x;
        event.y = y;
        event.button = 1;
        event.count = 1;
        pane.notifyListeners(SWT.MouseMove, event);
        pane.notifyListeners(SWT.MouseDown, event);
        event.stateMask = SWT.BUTTON1;
        pane.notifyListeners(SWT.MouseUp, event);
    }

    private static Optional<Control> pane(Composite chart) {
        for (Control child : chart.getChildren()) {
            if ("chart.pane".equals(child.getData("ohmstead.id"))) {
                return Optional.of(child);
            }
        }
        return Optional.empty();
    }

    @Test
    void anEntryThatIsChosenElsewhereTurnsToItsChart() throws Exception {
        fitted();
        LogEntry bridged = bench.desk.log().entries().stream()
                .filter(entry -> entry.reading().orElseThrow().mode() == Mode.BRIDGED)
                .findFirst()
                .orElseThrow();
        bench.desk.choose(Optional.of(bridged));
        bench.settle();
        assertTrue(bench.find("power.mode", Combo.class).getText().startsWith("Bridged"));
    }

    @Test
    void newRatingsAreJudgedAtOnce() throws Exception {
        fitted();
        bench.desk
                .session()
                .orElseThrow()
                .edit(
                        "Change ratings",
                        project -> project.withAmplifier(project.amplifier()
                                .withRatings(List.of(Samples.rating("r", Mode.STEREO, 4, 10, 12.6)))));
        bench.until("the rating is judged", () -> ratings().getItemCount() == 1);
        assertEquals("meets", ratings().getItem(0).getText(0));
        bench.desk.session().orElseThrow().undo();
        bench.until("the ratings are back", () -> ratings().getItemCount() == 6);
    }

    @Test
    void voidedReadingsLeaveTheCurves() throws Exception {
        fitted();
        Combo kind = bench.find("power.kind", Combo.class);
        assertEquals(2, kind.getItemCount());
        for (LogEntry entry : bench.desk.log().entries()) {
            if (entry.reading().orElseThrow().endPoint().equals(Samples.ONSET)) {
                bench.desk.voidEntry(entry.id(), "N. N.", "loose", failure -> {
                    throw new IllegalStateException(failure);
                });
            }
        }
        bench.until("the clipping onset is gone", () -> kind.getItemCount() == 1);
    }

    @Test
    void copiesThePowersAsATable() throws Exception {
        fitted();
        bench.select(bench.find("power.copy", Button.class));
        Clipboard clipboard = new Clipboard(bench.display);
        try {
            List<String> lines = ((String) clipboard.getContents(TextTransfer.getInstance()))
                    .lines()
                    .toList();
            assertEquals(3, lines.size());
            assertTrue(lines.get(0).startsWith("Load (\u03a9)\tCh.\tW at 12.0 V"), lines.get(0));
            assertTrue(lines.get(1).startsWith("4\tB\t"), lines.get(1));
        } finally {
            clipboard.dispose();
        }
    }

    @Test
    void numbersAndUncertaintiesAreShownAsTheUserWants() throws Exception {
        fitted();
        drawn();
        Combo mode = bench.find("power.mode", Combo.class);
        mode.select(mode.indexOf("Bridged, 1\u00a0kHz"));
        bench.select(mode);
        drawn();
        String[] twice = powers().getItem(0).getText(2).split("\u00a0\u00b1\u00a0");
        bench.desk.setDisplay(new DisplaySettings(1, true));
        drawn();
        assertEquals("Bridged, 1\u00a0kHz", mode.getText());
        assertEquals("W at 12,0 V", powers().getColumn(2).getText());
        String[] once = powers().getItem(0).getText(2).split("\u00a0\u00b1\u00a0");
        assertEquals(Double.parseDouble(twice[0]), Double.parseDouble(once[0].replace(',', '.')), 0.06);
        // Each is rounded to two digits.
        assertEquals(
                Double.parseDouble(twice[1]) / 2,
                Double.parseDouble(once[1].replace(',', '.')),
                0.05 * Double.parseDouble(twice[1]));
        String hint = ratings().getColumn(2).getToolTipText();
        assertTrue(hint.contains("standard uncertainty (k = 1)"), hint);
        assertTrue(
                ratings().getItem(0).getText(2).matches("\\d+,\\d+\u00a0\u00b1\u00a0\\d,\\d+"),
                ratings().getItem(0).getText(2));
        double supplyVolts = 13.5;
        chart().moveCursorTo(supplyVolts);
        bench.settle();
        assertEquals("W at 13,50 V", powers().getColumn(CurveSheet.CURSOR).getText());
        bench.select(bench.find("power.copy", Button.class));
        Clipboard clipboard = new Clipboard(bench.display);
        try {
            String text = (String) clipboard.getContents(TextTransfer.getInstance());
            assertTrue(text.contains("W at 12.0 V") && text.contains("W at 13.50 V"), text);
            assertTrue(text.contains("\t" + once[0].replace(',', '.') + " \u00b1 " + once[1].replace(',', '.')), text);
        } finally {
            clipboard.dispose();
        }
    }

    @Test
    void stopsListeningWhenItIsDisposed() throws Exception {
        PowerComposite power = fitted();
        power.dispose();
        bench.desk.choose(bench.desk.log().entry("R0001"));
        bench.settle();
        assertEquals(Optional.of("R0001"), bench.desk.chosenEntry().map(LogEntry::id));
    }

    @Test
    void answersWhatIsAskedBeforeAllPartsAreThere() throws Exception {
        bench.withLog(Samples.many()).open();
        PowerComposite power = new PowerComposite(bench.shell, bench.desk);
        bench.shell.open();
        power.setFocus();
        bench.find("power.joint", Button.class).setSelection(true);
        bench.find("power.joint", Button.class).notifyListeners(SWT.Selection, new Event());
        bench.find("power.copy", Button.class).notifyListeners(SWT.Selection, new Event());
        bench.desk.setDisplay(new DisplaySettings(2, true));
        bench.settle();
        bench.until("the curves are fitted", () -> powers().getItemCount() > 0);
        bench.until(
                "the chart has the focus",
                () -> bench.display.getFocusControl() != null
                        && bench.display.getFocusControl().getParent() == chart());
        assertTrue(bench.find("power.joint", Button.class).getSelection());
        String last = powers().getItem(0).getText(powers().getColumnCount() - 1);
        assertTrue(last.contains(","), last);
    }

    @Test
    void mayBeDisposedWhileItsPartsAreMade() throws Exception {
        bench.withLog(Samples.many()).open();
        bench.shell.open();
        for (int turns = 0; turns < 20; turns++) {
            PowerComposite power = new PowerComposite(bench.shell, bench.desk);
            bench.shell.layout();
            power.setFocus();
            for (int turn = 0; turn < turns; turn++) {
                bench.display.readAndDispatch();
            }
            power.dispose();
            bench.settle();
            assertEquals(0, bench.shell.getChildren().length);
        }
    }
}
