// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Part;
import org.ohmstead.model.Project;
import org.ohmstead.plot.ui.ChartCanvas;

class LoadDesignCompositeTest extends LoadDesignStage {
    @Test
    void saysWhatToDoWhenNoProjectIsOpen() {
        bench.showDesign();
        String message = bench.find("design.chart", ChartCanvas.class).message().orElse("");
        assertTrue(message.contains("No project is open."), message);
        assertFalse(bench.find("design.use", Button.class).isEnabled());
        bench.press("design.find");
        String said = bench.find("design.message", Label.class).getText();
        assertTrue(said.contains("No project is open."), said);
    }

    @Test
    void showsTheProjectsLoadsWithTheirState() throws Exception {
        open();
        Table loads = bench.find("design.loads.table", Table.class);
        assertEquals(4, loads.getItemCount());
        assertEquals("in use", loads.getItem(0).getText(6));
        bench.edit(project -> project.withLoads(List.of(
                load(project, "a", new LoadBranch(4.4, 0.01, 0, "8R-250W||8R-250W")),
                load(project, "b", new LoadBranch(4, 0.01, 0, "8R-250W||")),
                load(project, "c", new LoadBranch(4, 0.01, 0, "")))));
        assertEquals("differs", loads.getItem(0).getText(6));
        assertEquals("+10.00", loads.getItem(0).getText(4));
        assertEquals("not readable", loads.getItem(1).getText(6));
        assertEquals("no network", loads.getItem(2).getText(6));
    }

    private static BenchLoad load(Project project, String id, LoadBranch branch) {
        return project.loads().get(0).withId(id).withNominalOhms(4).withBranches(List.of(branch));
    }

    @Test
    void aLoadBecomesTheTargetAndItsNetworkIsShown() throws Exception {
        open();
        bench.choose("design.loads.table", 2);
        assertEquals("2", bench.find("design.ohms", Text.class).getText());
        assertEquals("800", bench.find("design.power", Text.class).getText());
        assertEquals("2ohm", bench.find("design.into", Combo.class).getText());
        assertEquals("4R||4R", network().getText());
        bench.until("the network is worked out", () -> wiring().contains("4R-300W no. 1"));
    }

    /** 4 ohm out of 8, 4, 2 and 1 ohm, half of the stock each: two of 2 ohm in series hit it and take 1000 W. */
    @Test
    void findsNetworksAndShowsTheBest() throws Exception {
        found();
        assertTrue(candidates().getItemCount() > 3);
        TableItem best = candidates().getItem(0);
        assertEquals("2R-500W+2R-500W", best.getText(0));
        assertEquals("4", best.getText(1));
        assertEquals("0.00", best.getText(2));
        assertEquals("2", best.getText(3));
        assertEquals("1000", best.getText(4));
        assertEquals(0, candidates().getSelectionIndex());
        String said = bench.find("design.message", Label.class).getText();
        assertTrue(said.contains("the answer is exact"), said);
        bench.until("the network is worked out", () -> wiring().contains("2R-500W no. 2"));
        Table heat = bench.find("design.heat.table", Table.class);
        assertEquals(2, heat.getItemCount());
        // 600 W in two equal parts of 500 W each.
        assertEquals("300", heat.getItem(0).getText(2));
        assertEquals("60 %, limits", heat.getItem(0).getText(3));
        assertEquals(
                Optional.empty(),
                bench.find("design.impedance", ChartCanvas.class).message());
        assertEquals(
                Optional.empty(), bench.find("design.chart", ChartCanvas.class).message());
        String caution = bench.find("design.caution", Label.class).getText();
        assertTrue(caution.contains("158 \u00b0C") && caution.contains("let it cool"), caution);
    }

    /** IEC 60028: 2 x 3.625 m of 2.5 mm2 copper are 0.05 ohm. */
    @Test
    void showsTheImpedanceBehindTheLeadsThatAreNamed() throws Exception {
        found();
        Label words = bench.find("design.impedance.words", Label.class);
        bench.until("the network is worked out", () -> !words.getText().isEmpty());
        assertFalse(words.getText().contains("terminals"), words::getText);
        assertEquals(
                Optional.empty(), bench.find("design.phase", ChartCanvas.class).message());
        bench.type("design.leadSection", "2.5");
        bench.type("design.leadLength", "3.625");
        assertTrue(words.getText().contains("reads 4.05 \u03a9;"), words::getText);
        bench.type("design.leadSection", "thick");
        String refused = bench.find("design.leadSection.message", Label.class).getText();
        assertTrue(refused.contains("AWG 14"), refused);
        bench.type("design.leadSection", "");
        assertFalse(words.getText().contains("terminals"), words::getText);
    }

    @Test
    void saysOfABridgedLoadThatNeitherTerminalIsGround() throws Exception {
        open();
        Combo arrangement = bench.find("design.arrangement", Combo.class);
        arrangement.select(arrangement.indexOf("One, bridged"));
        bench.select(arrangement);
        find();
        Label caution = bench.find("design.caution", Label.class);
        bench.until("the network is worked out", () -> !caution.getText().isEmpty());
        assertTrue(caution.getText().contains("neither terminal is ground"), caution::getText);
        assertTrue(wiring().contains("Neither terminal is ground."), wiring());
    }

    @Test
    void neverTakesMorePiecesThanBothBranchesHave() throws Exception {
        found();
        for (int row = 0; row < candidates().getItemCount(); row++) {
            String text = candidates().getItem(row).getText(0);
            for (Part part : bench.project().bench().parts()) {
                int used = text.split(part.id(), -1).length - 1;
                assertTrue(used <= part.count() / 2, text);
            }
        }
    }

    @Test
    void filtersWhileOneTypesAndSortsByAClick() throws Exception {
        found();
        int all = candidates().getItemCount();
        bench.find("design.candidates.filter", Text.class).setText("8R-250W 6");
        bench.settle();
        int some = candidates().getItemCount();
        assertTrue(some > 0 && some < all, some + " of " + all);
        for (int row = 0; row < some; row++) {
            assertTrue(candidates().getItem(row).getText(0).contains("8R-250W"));
        }
        bench.find("design.candidates.filter", Text.class).setText("");
        bench.settle();
        TableColumn limit = candidates().getColumn(4);
        limit.notifyListeners(SWT.Selection, new Event());
        limit.notifyListeners(SWT.Selection, new Event());
        bench.settle();
        List<Double> limits = new ArrayList<>();
        for (int row = 0; row < all; row++) {
            limits.add(Double.parseDouble(candidates().getItem(row).getText(4)));
        }
        assertEquals(limits.stream().sorted(Comparator.reverseOrder()).toList(), limits);
    }

    @Test
    void aClickInTheChartChoosesTheNetwork() throws Exception {
        found();
        ChartCanvas chart = bench.find("design.chart", ChartCanvas.class);
        boolean[] drawn = new boolean[1];
        chart.whenDrawn(() -> drawn[0] = true);
        bench.until("the chart is drawn", () -> drawn[0]);
        Control pane = bench.find("chart.pane", Control.class);
        String before = network().getText();
        // Nobody knows where the renderer puts a point: click along the pane until another one is hit.
        for (int y = pane.getSize().y - 1; y > 0 && network().getText().equals(before); y -= 4) {
            for (int x = pane.getSize().x - 1; x > 0 && network().getText().equals(before); x -= 4) {
                click(pane, x, y);
            }
        }
        assertFalse(network().getText().equals(before));
        assertEquals(
                network().getText(),
                candidates().getItem(candidates().getSelectionIndex()).getText(0));
    }

    private static void click(Control pane, int x, int y) {
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
}
