// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.ProgressBar;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Unsaved;

class LoadDesignUseTest extends LoadDesignStage {
    @Test
    void useThisLoadWritesItAndUndoTakesItBack() throws Exception {
        found();
        Project before = bench.project();
        bench.press("design.use");
        BenchLoad load = bench.project().load("4ohm").orElseThrow();
        assertEquals(2, load.branches().size());
        LoadBranch branch = load.branches().get(0);
        assertEquals("2R-500W+2R-500W", branch.network());
        assertEquals(4, branch.ohms(), SAME_RATIO);
        // Two equal shares of 1 % each add to sqrt(2) * 0.5 %, as a uniform distribution over the square root of 3.
        assertEquals(4 * 0.01 / Math.sqrt(2) / Math.sqrt(3), branch.standardUncertaintyOhms(), SAME_RATIO);
        assertEquals(1000, load.powerLimitWatts(), 1000 * SAME_RATIO);
        ProjectSession session = bench.desk.session().orElseThrow();
        assertEquals(Optional.of("Use load 4ohm"), session.undoName());
        assertTrue(summary().contains("Measure it"), summary());
        session.undo();
        assertEquals(before, session.project());
    }

    @Test
    void makesANewLoad() throws Exception {
        open();
        bench.type("design.ohms", "1R33");
        bench.type("design.error", "5");
        bench.type("design.power", "300");
        find();
        assertEquals("a new load", bench.find("design.into", Combo.class).getText());
        bench.press("design.use");
        BenchLoad load = bench.project().load("1.33ohm").orElseThrow();
        assertEquals(1.33, load.nominalOhms(), SAME_RATIO);
        assertEquals(1.33, load.branches().get(0).ohms(), 0.05 * 1.33);
        assertTrue(load.powerLimitWatts() >= 300);
        assertEquals("1.33ohm", bench.find("design.into", Combo.class).getText());
    }

    @Test
    void refusesPolitelyWhatIsOpenForReadingOnly() throws Exception {
        bench.withProject();
        ProjectSession other = ProjectSession.open(folder, Clock.systemUTC());
        assertFalse(other.readOnly());
        other.edit("Hold", project -> project.withTitle("held"));
        bench.open().showDesign();
        assertTrue(bench.desk.session().orElseThrow().readOnly());
        bench.choose("design.loads.table", FOUR_OHM);
        find();
        Project before = bench.project();
        bench.press("design.use");
        assertEquals(before, bench.project());
        assertTrue(summary().contains("reading only"), summary());
    }

    @Test
    void marksTheCharacterThatIsWrong() throws Exception {
        open();
        network().setText("(8R-250W||8R-250W)+(2R-500W||");
        bench.settle();
        assertTrue(summary().startsWith("Character 30"), summary());
        network().setText("8R-250W||x9");
        bench.settle();
        StyleRange[] ranges = network().getStyleRanges();
        assertEquals(1, ranges.length);
        assertEquals(9, ranges[0].start);
        assertTrue(ranges[0].underline);
        network().setText("8R-250W||8R-250W");
        bench.settle();
        assertEquals(0, network().getStyleRanges().length);
        assertTrue(summary().startsWith("4.000\u00a0\u00b1"), summary());
        bench.until("it is worked out", () -> wiring().contains("8R-250W no. 2"));
    }

    /** A stock of many different kinds keeps the search busy for longer than anybody waits. */
    @Test
    void cancelShowsTheBestSoFarAndSaysSo() throws Exception {
        open();
        double[] values = {
            1.1, 1.3, 1.7, 2.3, 2.9, 3.1, 3.7, 4.1, 4.3, 4.7, 5.3, 5.9, 6.1, 6.7, 7.1, 7.3, 7.9, 8.3, 8.9, 9.7
        };
        List<Part> parts = new ArrayList<>();
        for (double value : values) {
            parts.add(new Part("R" + value, value, 0.01, 100, 25, 250, Mounting.HEAT_SINK, 2));
        }
        bench.edit(project -> project.withBench(project.bench().withParts(parts)));
        bench.type("design.ohms", "3.1234567");
        bench.type("design.error", "");
        bench.type("design.parts", "30");
        bench.type("design.seconds", "3600");
        bench.press("design.find");
        ProgressBar bar = bench.find("design.progress", ProgressBar.class);
        bench.until("some of it is done", () -> bar.getSelection() > 30);
        bench.press("design.cancel");
        Button find = bench.find("design.find", Button.class);
        bench.until("the search has ended", find::isEnabled);
        String said = bench.find("design.message", Label.class).getText();
        assertTrue(said.startsWith("The best so far is shown. The search was cancelled."), said);
        assertTrue(candidates().getItemCount() > 0);
    }

    @Test
    void saysWhatIsMissingWhenNothingFits() throws Exception {
        open();
        bench.type("design.ohms", "1k");
        find();
        String said = bench.find("design.message", Label.class).getText();
        assertTrue(said.contains("in series"), said);
        // The nearest is shown all the same.
        assertEquals(1, candidates().getItemCount());
    }

    @Test
    void refusesATargetThatIsNone() throws Exception {
        open();
        bench.type("design.ohms", "-4");
        assertTrue(bench.find("design.ohms.message", Label.class).getText().contains("above 0"));
    }

    @Test
    void copiesTheWiringListAndSavesTheDrawing() throws Exception {
        found();
        bench.until("the network is worked out", () -> wiring().contains("2R-500W no. 2"));
        bench.press("design.wiring.copy");
        Clipboard clipboard = new Clipboard(bench.display);
        try {
            String copied = (String) clipboard.getContents(TextTransfer.getInstance());
            assertTrue(copied.startsWith("2R-500W+2R-500W\n"), copied);
            assertTrue(copied.contains("Joint C: join 2R-500W no. 1 lead 2 and 2R-500W no. 2 lead 1"), copied);
        } finally {
            clipboard.dispose();
        }
        WiringPane pane =
                (WiringPane) bench.find("design.wiring", StyledText.class).getParent();
        Path file = folder.resolve("drawn.svg");
        pane.save(file);
        Label said = bench.find("design.wiring.message", Label.class);
        bench.until("the drawing is saved", () -> said.getText().startsWith("Saved as drawn.svg"));
        assertTrue(Files.readString(file).contains("<svg"));
        pane.save(folder.resolve("nowhere").resolve("drawn.svg"));
        bench.until("it says why not", () -> said.getText().contains("not saved"));
    }

    @Test
    void theDrawingIsPaintedInItsCanvas() throws Exception {
        found();
        bench.until("the network is worked out", () -> wiring().contains("2R-500W no. 2"));
        DrawingCanvas drawing =
                (DrawingCanvas) bench.find("design.drawing", Canvas.class).getParent();
        assertEquals(2, drawing.drawing().orElseThrow().bodies().size());
        bench.choose("design.candidates.table", 1);
        bench.until(
                "the other one is worked out",
                () -> drawing.drawing().orElseThrow().bodies().size() == 3);
    }

    @Test
    void numbersAndUncertaintiesAreShownAsTheUserWants() throws Exception {
        found();
        bench.type("design.ohms", "4.04");
        assertTrue(
                candidates().getItem(0).getText(2).startsWith("-0.99"),
                candidates().getItem(0).getText(2));
        bench.desk.setDisplay(new DisplaySettings(3, true));
        bench.settle();
        assertEquals("4,04", bench.find("design.ohms", Text.class).getText());
        assertTrue(
                candidates().getItem(0).getText(2).startsWith("-0,99"),
                candidates().getItem(0).getText(2));
        assertTrue(summary().contains("(" + Coverage.words() + ")") && summary().contains("k = 3"), summary());
    }

    @Test
    void aClosedProjectLeavesNothingBehind() throws Exception {
        found();
        bench.desk.close(Unsaved.DISCARD);
        bench.settle();
        assertEquals(0, candidates().getItemCount());
        assertEquals(0, bench.find("design.loads.table", Table.class).getItemCount());
        assertFalse(bench.find("design.use", Button.class).isEnabled());
        assertEquals("", wiring());
    }

    @Test
    void figuresFollowAWarmerRoom() throws Exception {
        found();
        bench.type("design.ambient", "137.5");
        assertTrue(bench.find("design.ambient.message", Label.class).getText().contains("120"));
        bench.type("design.ambient", "115");
        // Two 2 ohm parts of 500 W at 25 degrees, none at 250: at 115 degrees 3/5 of it each.
        assertEquals("600", candidates().getItem(0).getText(4));
    }
}
