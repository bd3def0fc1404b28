// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Widget;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.workbench.look.Ids;

/** A person carries the plan out: measures a step, stops another by a key, releases the stop, and leaves the step out. */
class RunPlanTest {
    private static final String CONSOLE = "org.ohmstead.measure.ui.console";

    private final Bench bench = Bench.running();

    @TempDir
    Path folder;

    @BeforeEach
    void open() throws Exception {
        bench.perspective("org.ohmstead.app.bench");
        bench.page().resetPerspective();
        bench.openCopy(folder);
        bench.view(CONSOLE);
    }

    @AfterEach
    void close() throws Exception {
        bench.close();
        bench.reportStalls(getClass().getSimpleName());
    }

    private String state() {
        return bench.find("console.state", Label.class).getText();
    }

    private void ready() {
        bench.pump()
                .until(
                        () -> state().equals("Ready"),
                        () -> "The console says \"" + state() + "\" and \""
                                + bench.find("console.message", Label.class).getText() + "\".");
        bench.pump().settle();
    }

    private void appears(String id) {
        bench.pump().until(() -> Ids.exists(bench.shell(), id), id + " did not appear.");
    }

    /** Types into the panel that asks for a reason and a name, and agrees. */
    private void decide(String reason) {
        if (!reason.isEmpty()) {
            bench.find("console.reason.why", Text.class).setText(reason);
        }
        bench.find("console.reason.who", Text.class).setText("Test");
        bench.press(bench.find("console.reason.commit", Button.class));
    }

    /** Says yes to whatever the precautions warn of before the step at hand. */
    private void sayYes() {
        for (int most = 0; most < 10 && Ids.exists(bench.shell(), "console.confirm.0"); most++) {
            bench.press(bench.find("console.confirm.0", Button.class));
            decide("The load bank is watched.");
        }
    }

    /** Does it without waiting for what it starts. */
    private void at(Widget widget, int kind, int modifiers, int keyCode) {
        Event event = new Event();
        event.widget = widget;
        event.display = bench.display();
        event.stateMask = modifiers;
        event.keyCode = keyCode;
        event.character = (char) keyCode;
        event.doit = true;
        bench.display().asyncExec(() -> widget.notifyListeners(kind, event));
    }

    private String word(int item) {
        return bench.find("console.plan", Table.class).getItem(item).getText(0);
    }

    @Test
    void aStepIsMeasuredAnotherStoppedAndLeftOut() throws Exception {
        bench.pump()
                .until(() -> bench.find("console.first", Button.class).getVisible(), "Nothing says what to do first.");
        bench.press(bench.find("console.first", Button.class));
        chooseTheSimulatedBench();
        ready();
        sayYes();

        Table plan = bench.find("console.plan", Table.class);
        at(plan, SWT.KeyDown, SWT.MOD1, SWT.CR);
        bench.pump()
                .until(
                        () -> bench.desk().log().validReadings().size() == 1,
                        () -> "No reading came: "
                                + bench.find("console.message", Label.class).getText());
        ready();
        assertEquals("done", word(0));
        String step = bench.session().project().plan().get(0).id();
        bench.view("org.ohmstead.testlog.ui.log");
        Table log = bench.find("log.table", Table.class);
        bench.pump()
                .until(
                        () -> Arrays.stream(log.getItems())
                                .anyMatch(row -> rowText(log, log.indexOf(row)).contains(step)),
                        "The log does not show the reading.");
        bench.picture("console-measured");

        atTheirOwnPace();
        sayYes();
        at(bench.find("console.run.next", Button.class), SWT.Selection, 0, 0);
        bench.pump().until(() -> state().startsWith("Measuring"), () -> "It does not measure: " + state());
        at(log, SWT.KeyDown, SWT.MOD1 | SWT.MOD2, ' ');
        bench.pump()
                .until(
                        () -> state().equals("Stopped")
                                && bench.find("console.stopped", Label.class)
                                        .getText()
                                        .contains("The feed is silent"),
                        () -> "It was not stopped: " + state());
        bench.pump().settle();
        bench.picture("console-stopped");
        assertEquals(1, bench.desk().log().validReadings().size());

        bench.press(bench.find("console.release", Button.class));
        decide("");
        ready();
        assertEquals("failed", word(1));
        bench.press(bench.find("console.skip", Button.class));
        decide("The load became too hot.");
        bench.pump().until(() -> word(1).equals("skipped"), () -> "It is " + word(1));
        assertTrue(bench.desk().log().entries().stream()
                .flatMap(entry -> entry.note().stream())
                .anyMatch(note -> note.text().contains("emergency stop was pressed")));
    }

    private static String rowText(Table table, int row) {
        StringBuilder text = new StringBuilder();
        for (int column = 0; column < table.getColumnCount(); column++) {
            text.append(table.getItem(row).getText(column)).append(' ');
        }
        return text.toString();
    }

    private void chooseTheSimulatedBench() {
        Combo driver = bench.find("console.bench.driver", Combo.class);
        bench.pump().until(() -> driver.indexOf("Simulated bench") >= 0, "The simulated bench is not offered.");
        driver.select(driver.indexOf("Simulated bench"));
        bench.press(driver);
        Text operator = bench.find("console.bench.operator", Text.class);
        operator.setText("Test");
        bench.send(operator, SWT.DefaultSelection);
    }

    /** Has time pass on the simulated bench as on a real one, so that there is time to stop it. */
    private void atTheirOwnPace() {
        appears("console.bench.setting.realPace");
        Button pace = bench.find("console.bench.setting.realPace", Button.class);
        pace.setSelection(true);
        bench.press(pace);
        ready();
    }
}
