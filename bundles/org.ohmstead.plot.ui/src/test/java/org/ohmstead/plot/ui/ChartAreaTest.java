// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.plot.ui.UiThread.settle;
import static org.ohmstead.plot.ui.UiThread.until;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.chart.ChartLayout;

/** Where the chart tells others that its axes are. */
class ChartAreaTest {
    private final List<Optional<ChartArea>> told = new ArrayList<>();
    private Shell shell;
    private ChartCanvas chart;

    @BeforeEach
    void open() {
        shell = new Shell(Display.getDefault());
        shell.setLayout(new FillLayout());
        chart = new ChartCanvas(shell, SWT.NONE);
        shell.setSize(700, 480);
        shell.open();
        chart.addAreaListener(told::add);
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    private void show() {
        chart.show(PlotSource.of(ChartCanvasTest.power()));
        settle(chart);
    }

    @Test
    void thereIsNoneWhileNothingIsDrawn() {
        assertEquals(Optional.empty(), chart.area());
        show();
        assertTrue(chart.area().isPresent());
        chart.showMessage("Nothing yet.");
        assertEquals(Optional.empty(), chart.area());
        assertEquals(Optional.empty(), told.get(told.size() - 1));
    }

    @Test
    void liesWhereTheRendererPutTheAxes() {
        show();
        ChartLayout drawn = chart.picture().orElseThrow().layout();
        ChartArea area = chart.area().orElseThrow();
        Rectangle bounds = area.bounds();
        assertEquals(drawn.left(), bounds.x, 0.5);
        assertEquals(drawn.left() + drawn.width(), bounds.x + bounds.width, 0.5);
        assertEquals(drawn.top(), bounds.y, 0.5);
        // The axis goes from 10 to 16 V.
        assertEquals(drawn.left(), area.x().toPosition(10), 1e-9);
        assertEquals(drawn.left() + drawn.width(), area.x().toPosition(16), 1e-9);
        assertEquals(Optional.of(area), told.get(told.size() - 1));
    }

    @Test
    void followsZoomAndSize() {
        show();
        ChartArea before = chart.area().orElseThrow();
        chart.zoomTo(ViewWindow.ofX(12, 14));
        settle(chart);
        ChartArea zoomed = chart.area().orElseThrow();
        assertEquals(12, zoomed.x().lower(), 1e-9);
        assertEquals(14, zoomed.x().upper(), 1e-9);
        assertEquals(Optional.of(zoomed), told.get(told.size() - 1));
        shell.setSize(900, 480);
        until("the wider picture", () -> chart.area().orElseThrow().bounds().width > before.bounds().width + 100);
        assertEquals(chart.area(), told.get(told.size() - 1));
    }

    @Test
    void whoIsTakenAwayHearsNothing() {
        Runnable takeAway = chart.addAreaListener(area -> told.clear());
        takeAway.run();
        show();
        assertTrue(!told.isEmpty());
    }

    @Test
    void nobodyCanMoveItThroughTheRectangle() {
        show();
        ChartArea area = chart.area().orElseThrow();
        Rectangle before = area.bounds();
        area.bounds().x += 50;
        assertEquals(before, area.bounds());
    }
}
