// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.plot.ui.UiThread.settle;
import static org.ohmstead.plot.ui.UiThread.until;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.chart.ChartLook;

/** A chart that gets less room than a picture needs, and another look meanwhile. */
class ChartRoomTest {
    private static final Color NIGHT = new Color(0x2D, 0x2F, 0x31);
    private static final int LOW = 50;
    private static final int HIGH = 320;

    private Shell shell;
    private ChartCanvas chart;
    private Control pane;
    private Control legend;

    @BeforeEach
    void open() {
        shell = new Shell(Display.getDefault());
        shell.setLayout(new FillLayout());
        chart = new ChartCanvas(shell, SWT.NONE);
        chart.setBackground(new Color(255, 255, 255));
        pane = chart.getChildren()[0];
        legend = chart.getChildren()[1];
        shell.setSize(600, 400);
        shell.open();
        shell.setLayout(null);
        chart.setBounds(0, 0, 560, HIGH);
        chart.show(PlotSource.of(ChartCanvasTest.power()));
        settle(chart);
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    /** Returns how bright what is on the screen is, 0 to 1, on the average over a control. */
    private static double brightness(Control control) {
        control.getDisplay().update();
        Point size = control.getSize();
        Image image = new Image(control.getDisplay(), size.x, size.y);
        GC gc = new GC(control);
        try {
            gc.copyArea(image, 0, 0);
            ImageData pixels = image.getImageData();
            double sum = 0;
            for (int y = 0; y < pixels.height; y++) {
                for (int x = 0; x < pixels.width; x++) {
                    sum += pixels.palette.getRGB(pixels.getPixel(x, y)).getHSB()[2];
                }
            }
            return sum / (pixels.width * pixels.height);
        } finally {
            gc.dispose();
            image.dispose();
        }
    }

    @Test
    void theThemeReachesAChartWithoutRoomForAPicture() {
        chart.setBounds(0, 0, 560, LOW);
        settle(chart);
        boolean[] painted = {false};
        pane.addListener(SWT.Paint, event -> painted[0] = true);
        chart.setBackground(NIGHT);
        until("a paint", () -> painted[0]);
        settle(chart);
        until("a dark chart", () -> brightness(pane) < 0.5);
    }

    @Test
    void whatGrowsAgainIsDrawnInTheLookOfThen() {
        chart.setBounds(0, 0, 560, LOW);
        settle(chart);
        chart.setBackground(NIGHT);
        chart.setBounds(0, 0, 560, HIGH);
        settle(chart);
        assertEquals(ChartLook.DARK, chart.picture().orElseThrow().request().look());
        until("a dark legend", () -> brightness(legend) < 0.5);
    }

    @Test
    void theLegendGivesItsRoomToALowChart() {
        int high = legend.getSize().y;
        chart.setBounds(0, 0, 560, 120);
        settle(chart);
        assertTrue(high > 0);
        assertEquals(0, legend.getSize().y);
        assertEquals(120, pane.getSize().y);
        assertFalse(chart.picture().isEmpty());
        assertEquals(120, chart.picture().orElseThrow().request().height());
    }

    @Test
    void entriesThatTakeThePlaceOfOthersOfTheirSizeAreSeen() {
        Plot plot = ChartCanvasTest.power();
        Series last = plot.series().get(plot.series().size() - 1);
        for (String name : new String[] {"8 ohm", "4 ohm"}) { // digits are of one width
            chart.show(PlotSource.of(plot.withSeries(new Series(name, last.points(), last.style(), last.tone()))));
            settle(chart);
        }
        Control[] entries = ((Composite) legend).getChildren();
        assertTrue(entries.length > 0);
        for (Control entry : entries) {
            assertTrue(entry.getSize().x > 0, "an entry has no room");
        }
    }
}
