// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.plot.ui.UiThread.settle;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class ChartFontTest {
    private Shell shell;
    private ChartCanvas chart;
    private Font large;

    @BeforeEach
    void open() {
        shell = new Shell(Display.getDefault());
        shell.setLayout(new FillLayout());
        chart = new ChartCanvas(shell, SWT.NONE);
        FontData usual = chart.getFont().getFontData()[0];
        large = new Font(shell.getDisplay(), usual.getName(), 3 * usual.getHeight(), SWT.NORMAL);
        shell.setSize(900, 600);
        shell.open();
        chart.show(PlotSource.of(ChartCanvasTest.power()));
        settle(chart);
    }

    @AfterEach
    void close() {
        shell.dispose();
        large.dispose();
    }

    private int roomBelowTheAxis() {
        ChartArea area = chart.area().orElseThrow();
        return chart.getClientArea().height - area.bounds().y - area.bounds().height;
    }

    @Test
    void theTextsOfThePictureAndTheLegendGrowWithTheFont() {
        int before = roomBelowTheAxis();
        Composite legend = (Composite) chart.getChildren()[1];
        int toggleBefore = legend.getChildren()[0].getSize().y;
        chart.setFont(large);
        settle(chart);
        // Numbers, the name of the axis and the legend stand there, all three times as high.
        assertTrue(roomBelowTheAxis() > 2 * before, roomBelowTheAxis() + " after " + before);
        assertTrue(legend.getChildren()[0].getSize().y > toggleBefore + 10);
    }

    @Test
    void aLegendThatComesLaterHasTheFontToo() {
        chart.showMessage("none");
        settle(chart);
        chart.setFont(large);
        chart.show(PlotSource.of(ChartCanvasTest.power()));
        settle(chart);
        for (Control each : ((Composite) chart.getChildren()[1]).getChildren()) {
            assertEquals(large, each.getFont());
        }
    }
}
