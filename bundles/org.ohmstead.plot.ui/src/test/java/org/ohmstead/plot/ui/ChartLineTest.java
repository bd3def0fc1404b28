// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.plot.ui.UiThread.key;
import static org.ohmstead.plot.ui.UiThread.mouse;
import static org.ohmstead.plot.ui.UiThread.settle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.chart.ChartLayout;

/** The line that the user drags. */
class ChartLineTest {
    private final List<Double> places = new ArrayList<>();
    private Shell shell;
    private ChartCanvas chart;
    private Control pane;

    @BeforeEach
    void open() {
        shell = new Shell(Display.getDefault());
        shell.setLayout(new FillLayout());
        chart = new ChartCanvas(shell, SWT.NONE);
        pane = chart.getChildren()[0];
        shell.setSize(700, 480);
        shell.open();
        chart.show(PlotSource.of(ChartCanvasTest.power()));
        chart.addLineListener(places::add);
        settle(chart);
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    private ChartLayout layout() {
        return chart.picture().orElseThrow().layout();
    }

    private void drag(double fromX, double toX) {
        double y = layout().top() + 40;
        mouse(pane, SWT.MouseDown, 1, 0, fromX, y);
        mouse(pane, SWT.MouseMove, 0, SWT.BUTTON1, toX, y);
        mouse(pane, SWT.MouseUp, 1, SWT.BUTTON1, toX, y);
    }

    @Test
    void draggingMovesTheLineAndDoesNotZoom() {
        chart.setLine(OptionalDouble.of(12.0));
        assertEquals(List.of(), places);
        double to = Math.round(layout().x().toPosition(14));
        drag(layout().x().toPosition(12) + 2, to);
        double volts = layout().x().toValue(to);
        assertEquals(OptionalDouble.of(volts), chart.line());
        assertEquals(List.of(volts), places);
        assertEquals(Optional.empty(), chart.window());
    }

    @Test
    void besideTheLineDraggingZoomsAsEver() {
        chart.setLine(OptionalDouble.of(12.0));
        drag(layout().x().toPosition(12.5), layout().x().toPosition(14));
        assertEquals(OptionalDouble.of(12.0), chart.line());
        assertTrue(chart.window().isPresent());
    }

    @Test
    void theLineStaysWithinTheAxes() {
        chart.setLine(OptionalDouble.of(12.0));
        drag(layout().x().toPosition(12), layout().left() + layout().width() + 200);
        assertEquals(16, chart.line().orElseThrow(), 1e-9);
    }

    @Test
    void keysMoveTheLineByAHundredthOfTheWidth() {
        key(pane, '.', 0);
        assertEquals(OptionalDouble.empty(), chart.line());
        chart.setLine(OptionalDouble.of(12.0));
        key(pane, '.', 0);
        // The axis goes from 10 to 16 V.
        assertEquals(12.06, chart.line().orElseThrow(), 1e-9);
        key(pane, ',', 0);
        assertEquals(12.0, chart.line().orElseThrow(), 1e-9);
        assertEquals(2, places.size());
    }
}
