// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.Stock;
import org.ohmstead.load.drawing.NetworkDrawing;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.look.Ids;

class LoadBankCompositeTest {
    private static final double TWO_PERCENT = 0.02;

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

    private String said() {
        return bench.find("bank.message", Label.class).getText();
    }

    private Table straps() {
        return bench.find("bank.straps.table", Table.class);
    }

    private void plan() {
        bench.press("bank.find");
        Button plan = bench.find("bank.find", Button.class);
        bench.until("the bank is planned", plan::isEnabled);
    }

    @Test
    void saysWhatToDoWhenThereIsNothing() {
        bench.showBank();
        bench.press("bank.find");
        assertTrue(said().contains("No project is open."), said());
        assertFalse(bench.find("bank.use", Button.class).isEnabled());
    }

    @Test
    void plansAllLoadsWithWhatIsInTheStock() throws Exception {
        bench.withProject().open().showBank();
        plan();
        assertEquals(4, straps().getItemCount());
        assertTrue(said().contains("serve 4 loads"), said());
        for (int row = 0; row < 4; row++) {
            assertTrue(Math.abs(Double.parseDouble(straps().getItem(row).getText(3))) <= 100 * TWO_PERCENT);
        }
        StyledText steps = bench.find("bank.steps", StyledText.class);
        DrawingCanvas drawing =
                (DrawingCanvas) bench.find("bank.drawing", Canvas.class).getParent();
        bench.choose("bank.straps.table", 0);
        // What lies on the left in the drawing is joined to terminal A by the end that stands first behind its name.
        assertTrue(steps.getText().contains("mark its end 1 with tape"), steps::getText);
        List<String> names = names(drawing);
        assertFalse(names.isEmpty());
        for (String name : names) {
            assertTrue(name.endsWith(" (1\u20132)"), name);
            String piece = name.substring(0, name.indexOf(" ("));
            assertTrue(steps.getText().contains("end 1 of " + piece), steps::getText);
        }
        bench.choose("bank.straps.table", 1);
        assertTrue(steps.getText().contains("let the resistors cool"), steps::getText);
        assertTrue(steps.getText().contains("Branch 2: expect "), steps::getText);
        assertEquals(2, bench.find("bank.branch", Combo.class).getItemCount());
        NetworkDrawing first = drawing.drawing().orElseThrow();
        assertTrue(first.labels().stream().anyMatch(label -> label.text().contains("#")));
        Combo branch = bench.find("bank.branch", Combo.class);
        branch.select(1);
        bench.select(branch);
        assertFalse(first.equals(drawing.drawing().orElseThrow()), "the other branch has other pieces");
    }

    private static List<String> names(DrawingCanvas canvas) {
        return canvas.drawing().orElseThrow().labels().stream()
                .filter(label -> label.role() == NetworkDrawing.Role.ID)
                .map(NetworkDrawing.Label::text)
                .toList();
    }

    /** The button is there before what its result is shown in. */
    @Test
    void aPlanThatIsAskedForWhileTheViewIsMadeIsMadeAfterwards() throws Exception {
        bench.withProject().open();
        new LoadBankComposite(bench.shell, bench.desk);
        bench.shell.open();
        while (!Ids.exists(bench.shell, "bank.find")) {
            bench.display.readAndDispatch();
        }
        assertFalse(Ids.exists(bench.shell, "bank.straps.table"));
        bench.press("bank.find");
        bench.until("the bank is planned", () -> straps().getItemCount() == 4);
    }

    @Test
    void useThisBankWritesAllLoadsAndUndoTakesThemBack() throws Exception {
        bench.withProject().open().showBank();
        Project before = bench.project();
        plan();
        bench.press("bank.use");
        Project after = bench.project();
        Stock stock = Stock.of(after.bench().parts());
        for (BenchLoad load : after.loads()) {
            assertEquals(2, load.branches().size());
            for (LoadBranch branch : load.branches()) {
                double ohms = NetworkNotation.parse(branch.network(), stock).ohms();
                assertEquals(ohms, branch.ohms(), 1e-12 * ohms);
                assertEquals(load.nominalOhms(), ohms, TWO_PERCENT * load.nominalOhms());
            }
        }
        assertEquals(
                Optional.of("Use load bank"), bench.desk.session().orElseThrow().undoName());
        bench.desk.session().orElseThrow().undo();
        assertEquals(before, bench.project());
    }

    @Test
    void saysWhichLoadCannotBeMade() throws Exception {
        bench.withProject().open().showBank();
        bench.edit(project -> project.withLoads(List.of(
                project.loads().get(0), project.loads().get(1).withId("high").withNominalOhms(500))));
        plan();
        assertTrue(said().contains("The load of 500 ohm cannot be made"), said());
        assertEquals(1, straps().getItemCount());
    }
}
