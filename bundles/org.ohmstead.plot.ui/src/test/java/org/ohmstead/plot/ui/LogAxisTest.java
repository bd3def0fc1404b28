// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.ohmstead.plot.ui.UiThread.key;
import static org.ohmstead.plot.ui.UiThread.settle;

import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

class LogAxisTest {
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
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    @Test
    void logAxisZoomsInRatios() {
        double[] hertz = {10, 100, 1000, 10_000};
        Plot plot = Plot.of(
                        "",
                        Axis.log("Frequency", "Hz").withRange(10, 10_000),
                        Axis.linear("Level", "dB").withRange(-10, 10))
                .withSeries(Series.of("level", hertz, new double[] {-1, 0, 0, -2}, Style.LINE, 0));
        chart.show(PlotSource.of(plot));
        settle(chart);
        key(pane, '+', 0);
        ViewWindow window = chart.window().orElseThrow();
        // The middle of three decades stays; two decades are left of them at a factor of 1.5.
        assertEquals(Math.sqrt(10.0 * 10_000), Math.sqrt(window.lowerX() * window.upperX()), 1e-6);
        assertEquals(100, window.upperX() / window.lowerX(), 1e-6);
        // Half way between 100 and 1000 Hz in the drawing is their geometric mean; the line is level there.
        chart.moveCursorTo(10 * Math.sqrt(10));
        assertEquals(
                -0.5, chart.readOut().orElseThrow().entry("level").orElseThrow().y(), 1e-9);
    }
}
