// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.plot.ui.UiThread.key;
import static org.ohmstead.plot.ui.UiThread.mouse;
import static org.ohmstead.plot.ui.UiThread.settle;
import static org.ohmstead.plot.ui.UiThread.until;
import static org.ohmstead.plot.ui.UiThread.wheel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.chart.ChartLayout;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.internal.ChartPane;

class ChartCanvasTest {
    private static final double[] VOLTS = {11, 12, 13, 14.4, 15};
    private static final double[] WATTS = {45, 54, 64, 79, 86};
    private static final double[] HALVES = {1, 1.2, 1.4, 1.7, 2};

    private Shell shell;
    private ChartCanvas chart;
    private Control pane;

    static Plot power() {
        return Plot.of(
                        "Power",
                        Axis.linear("Supply", "V").withRange(10, 16),
                        Axis.linear("Power", "W").withRange(0, 100))
                .withBand(
                        Band.of("95 %", VOLTS, new double[] {43, 52, 61, 75, 80}, new double[] {47, 56, 67, 83, 92}, 0))
                .withSeries(Series.of("fit", VOLTS, WATTS, Style.LINE, 2))
                .withSeries(Series.withBars("measured", VOLTS, WATTS, HALVES, Style.MARKERS, 1));
    }

    @BeforeEach
    void open() {
        shell = new Shell(Display.getDefault());
        shell.setLayout(new FillLayout());
        chart = new ChartCanvas(shell, SWT.NONE);
        chart.setLook(ChartLook.LIGHT);
        pane = chart.getChildren()[0];
        shell.setSize(700, 480);
        shell.open();
        chart.show(PlotSource.of(power()));
        settle(chart);
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    private ChartLayout layout() {
        return chart.picture().orElseThrow().layout();
    }

    private double x(double value) {
        return layout().x().toPosition(value);
    }

    private double y(double value) {
        return layout().y().toPosition(value);
    }

    private int pixelsOf(int colour) {
        ImageData pixels = chart.picture().orElseThrow().pixels();
        int count = 0;
        for (int y = 0; y < pixels.height; y++) {
            for (int x = 0; x < pixels.width; x++) {
                count += (pixels.getPixel(x, y) & 0xFFFFFF) == colour ? 1 : 0;
            }
        }
        return count;
    }

    private Control toggle(String name) {
        Composite legend = (Composite) chart.getChildren()[1];
        for (Control each : legend.getChildren()) {
            if (("chart.legend." + name).equals(each.getData("ohmstead.id"))) {
                return each;
            }
        }
        throw new AssertionError("no toggle " + name);
    }

    @Test
    void drawsThePlotInItsColours() {
        assertTrue(pixelsOf(Palette.colour(1)) > 60);
        assertTrue(pixelsOf(Palette.colour(2)) > 60);
        assertEquals(Optional.empty(), chart.window());
    }

    @Test
    void wheelZoomsAroundThePointer() {
        wheel(pane, 0, 3, x(13), y(60));
        settle(chart);
        ViewWindow window = chart.window().orElseThrow();
        // One notch: 1.25 times as narrow. 13 is half way; the pointer is on a whole pixel, so a little beside it.
        double perPixel = 6 / layout().width();
        assertEquals(6 / 1.25, window.upperX() - window.lowerX(), 1e-9);
        assertEquals(13 - 3 / 1.25, window.lowerX(), perPixel);
        assertEquals(100 / 1.25, window.upperY().orElseThrow() - window.lowerY().orElseThrow(), 1e-9);
        assertEquals(window.lowerX(), layout().x().lower());
    }

    @Test
    void wheelWithCtrlZoomsXAloneAndWithShiftYAlone() {
        wheel(pane, SWT.MOD1, 3, x(13), y(60));
        assertTrue(chart.window().orElseThrow().lowerY().isEmpty());
        chart.resetZoom();
        wheel(pane, SWT.MOD2, 3, x(13), y(60));
        ViewWindow window = chart.window().orElseThrow();
        assertEquals(10, window.lowerX(), 1e-12);
        assertEquals(16, window.upperX(), 1e-12);
        assertTrue(window.lowerY().orElseThrow() > 0);
    }

    @Test
    void draggedRectangleFillsTheView() {
        double left = Math.round(x(12));
        double right = Math.round(x(14));
        double top = Math.round(y(80));
        double bottom = Math.round(y(50));
        ViewWindow wanted = ViewWindow.of(
                layout().x().toValue(left),
                layout().x().toValue(right),
                layout().y().toValue(bottom),
                layout().y().toValue(top));
        mouse(pane, SWT.MouseDown, 1, 0, left, top);
        mouse(pane, SWT.MouseMove, 0, SWT.BUTTON1, right, bottom);
        mouse(pane, SWT.MouseUp, 1, SWT.BUTTON1, right, bottom);
        ViewWindow window = chart.window().orElseThrow();
        assertEquals(wanted.lowerX(), window.lowerX(), 1e-9);
        assertEquals(wanted.upperX(), window.upperX(), 1e-9);
        assertEquals(wanted.lowerY().orElseThrow(), window.lowerY().orElseThrow(), 1e-9);
        assertEquals(wanted.upperY().orElseThrow(), window.upperY().orElseThrow(), 1e-9);
        mouse(pane, SWT.MouseDoubleClick, 1, 0, left, top);
        assertEquals(Optional.empty(), chart.window());
    }

    @Test
    void middleButtonPans() {
        chart.zoomTo(ViewWindow.of(12, 14, 40, 80));
        settle(chart);
        double width = layout().width();
        mouse(pane, SWT.MouseDown, 2, 0, 300, 200);
        mouse(pane, SWT.MouseMove, 0, SWT.BUTTON2, 300 - 50, 200);
        mouse(pane, SWT.MouseUp, 2, SWT.BUTTON2, 250, 200);
        ViewWindow window = chart.window().orElseThrow();
        assertEquals(12 + 2 * 50 / width, window.lowerX(), 1e-9);
        assertEquals(40, window.lowerY().orElseThrow(), 1e-9);
    }

    @Test
    void keysZoomPanAndReset() {
        key(pane, '+', 0);
        ViewWindow zoomed = chart.window().orElseThrow();
        assertEquals(4, zoomed.upperX() - zoomed.lowerX(), 1e-9);
        key(pane, SWT.ARROW_RIGHT, 0);
        assertEquals(zoomed.lowerX() + 0.4, chart.window().orElseThrow().lowerX(), 1e-9);
        key(pane, SWT.ARROW_UP, 0);
        assertTrue(chart.window().orElseThrow().lowerY().orElseThrow()
                > zoomed.lowerY().orElseThrow());
        for (int reset : new int[] {'0', SWT.HOME, SWT.ESC}) {
            key(pane, '+', 0);
            key(pane, reset, 0);
            assertEquals(Optional.empty(), chart.window(), "key " + reset);
        }
    }

    @Test
    void readOutIsWrittenInTheWantedStyle() {
        chart.moveCursorTo(14.4);
        List<Optional<PlotReadOut>> heard = new ArrayList<>();
        chart.addCursorListener(heard::add);
        chart.setReadOutStyle(new ReadOutStyle(true, "k = 2"));
        assertEquals(1, heard.size());
        PlotReadOut readOut = chart.readOut().orElseThrow();
        assertEquals(
                "79,0 W ± 1,7 W (k = 2)",
                readOut.entry("measured").orElseThrow().text());
        assertTrue(readOut.xText().startsWith("14,4"), readOut.xText());
        assertFalse(readOut.bands().get(0).text().contains("."), readOut.bands()::toString);
    }

    @Test
    void readOutHasTheValuesOfTheData() {
        List<Optional<PlotReadOut>> heard = new ArrayList<>();
        Runnable stop = chart.addCursorListener(heard::add);
        chart.moveCursorTo(14.4);
        PlotReadOut readOut = chart.readOut().orElseThrow();
        PlotReadOut.Entry measured = readOut.entry("measured").orElseThrow();
        assertEquals(79, measured.y());
        assertEquals(1.7, measured.barHalfLength().orElseThrow());
        assertEquals("79.0 W ± 1.7 W (95 %)", measured.text());
        assertEquals(79, readOut.entry("fit").orElseThrow().y());
        assertEquals(75, readOut.bands().get(0).lower());
        // Between two points of the line: half way from 54 to 64.
        chart.moveCursorTo(12.5);
        assertEquals(
                59, chart.readOut().orElseThrow().entry("fit").orElseThrow().y(), 1e-9);
        assertTrue(chart.readOut().orElseThrow().entry("measured").isEmpty());
        assertEquals(2, heard.size());
        stop.run();
        chart.moveCursorTo(13);
        assertEquals(2, heard.size());
    }

    @Test
    void pointerOnAPointReadsAndChoosesIt() {
        List<ChosenPoint> chosen = new ArrayList<>();
        chart.addPointListener(chosen::add);
        mouse(pane, SWT.MouseMove, 0, 0, x(13) + 3, y(64) - 2);
        PlotReadOut readOut = chart.readOut().orElseThrow();
        assertEquals(13, readOut.x());
        assertEquals(new ChosenPoint("measured", 2, 13, 64), readOut.point().orElseThrow());
        mouse(pane, SWT.MouseDown, 1, 0, x(13) + 3, y(64) - 2);
        mouse(pane, SWT.MouseUp, 1, SWT.BUTTON1, x(13) + 3, y(64) - 2);
        assertEquals(List.of(new ChosenPoint("measured", 2, 13, 64)), chosen);
        mouse(pane, SWT.MouseMove, 0, 0, 2, 2);
        assertEquals(Optional.empty(), chart.readOut());
    }

    @Test
    void crosshairMovesByKeys() {
        chart.moveCursorTo(12.2);
        key(pane, SWT.ARROW_RIGHT, SWT.MOD1);
        assertEquals(12.26, chart.readOut().orElseThrow().x(), 1e-9);
        key(pane, SWT.ARROW_RIGHT, SWT.MOD1 | SWT.MOD2);
        assertEquals(13, chart.readOut().orElseThrow().x());
        key(pane, SWT.ARROW_LEFT, SWT.MOD1 | SWT.MOD2);
        assertEquals(12, chart.readOut().orElseThrow().x());
        key(pane, SWT.ESC, 0);
        assertEquals(Optional.empty(), chart.readOut());
    }

    @Test
    void movingTheCrosshairDrawsNoNewPicture() {
        int before = chart.picturesDrawn();
        for (double x = 11; x < 15; x += 0.1) {
            chart.moveCursorTo(x);
        }
        settle(chart);
        assertEquals(before, chart.picturesDrawn());
    }

    @Test
    void legendTogglesHideSeries() {
        mouse(toggle("measured"), SWT.MouseUp, 1, 0, 3, 3);
        settle(chart);
        assertFalse(chart.seriesVisible("measured"));
        assertEquals(0, pixelsOf(Palette.colour(1)));
        chart.moveCursorTo(14.4);
        assertTrue(chart.readOut().orElseThrow().entry("measured").isEmpty());
        key(toggle("measured"), ' ', 0);
        settle(chart);
        assertTrue(chart.seriesVisible("measured"));
        assertTrue(pixelsOf(Palette.colour(1)) > 60);
    }

    @Test
    void hidingKeepsTheAxes() {
        ChartLayout before = layout();
        chart.setSeriesVisible("fit", false);
        settle(chart);
        assertEquals(before, layout());
        assertEquals(0, pixelsOf(Palette.colour(2)));
    }

    @Test
    void messageStandsInPlaceOfThePlot() {
        chart.moveCursorTo(13);
        chart.showMessage("Run a measurement, and its curve will be drawn here.");
        settle(chart);
        assertEquals(Optional.empty(), chart.readOut());
        assertEquals(Optional.of("Run a measurement, and its curve will be drawn here."), chart.message());
        assertEquals("Run a measurement, and its curve will be drawn here.", ((ChartPane) pane).spokenName());
        chart.show(PlotSource.of(power()));
        settle(chart);
        assertEquals(Optional.empty(), chart.message());
        assertTrue(pixelsOf(Palette.colour(1)) > 60);
    }

    @Test
    void windowAndCrosshairStayWhereAskedFor() {
        chart.zoomTo(ViewWindow.of(12, 14, 40, 80));
        chart.moveCursorTo(13);
        settle(chart);
        double[] more = {50, 60, 70, 90, 95};
        Plot next = power().withSeries(Series.of("next", VOLTS, more, Style.LINE, 3));
        chart.show(PlotSource.of(next), true);
        settle(chart);
        assertEquals(Optional.of(ViewWindow.of(12, 14, 40, 80)), chart.window());
        assertEquals(
                70, chart.readOut().orElseThrow().entry("next").orElseThrow().y());
        assertTrue(toggle("next").isVisible());
        chart.show(PlotSource.of(next));
        settle(chart);
        assertEquals(Optional.empty(), chart.window());
        assertEquals(Optional.empty(), chart.readOut());
    }

    @Test
    void windowBeyondThePlotIsMovedInside() {
        chart.zoomTo(ViewWindow.of(-1000, 1000, 20, 40));
        settle(chart);
        ViewWindow window = chart.window().orElseThrow();
        assertEquals(10, window.lowerX());
        assertEquals(16, window.upperX());
        assertEquals(20, window.lowerY().orElseThrow(), 1e-9);
    }

    @Test
    void spokenNameHasTitleAndValues() {
        chart.moveCursorTo(14.4);
        String name = ((ChartPane) pane).spokenName();
        assertTrue(name.startsWith("Power. At 14.4"), name);
        assertTrue(name.contains("measured 79.0 W ± 1.7 W (95 %)"), name);
    }

    @Test
    void lookChangesTheColoursOfThePicture() {
        int before = pixelsOf(ChartLook.DARK.background());
        chart.setLook(ChartLook.DARK);
        settle(chart);
        assertEquals(0, before);
        assertTrue(pixelsOf(ChartLook.DARK.background()) > 10_000);
        assertEquals(0, pixelsOf(0xFFFFFF));
    }

    @Test
    void failingSourceSaysSoAndTheNextIsDrawn() {
        chart.show((window, width) -> {
            throw new IllegalArgumentException("The record is empty.");
        });
        settle(chart);
        assertEquals("This chart could not be drawn: The record is empty.", ((ChartPane) pane).spokenName());
        chart.show(PlotSource.of(power()));
        settle(chart);
        assertTrue(pixelsOf(Palette.colour(1)) > 60);
    }

    @Test
    void sizeChangeDrawsAnew() {
        int before = chart.picturesDrawn();
        int width = chart.picture().orElseThrow().request().width();
        shell.setSize(800, 520);
        until("the new size", () -> {
            settle(chart);
            return chart.picture().orElseThrow().request().width() != width;
        });
        assertNotEquals(before, chart.picturesDrawn());
        assertEquals(pane.getSize().x, chart.picture().orElseThrow().request().width());
    }

    @Test
    void tabLeavesTheChartAndEscapeOnlyWhenThereIsNothingToUndo() {
        Event tab = new Event();
        tab.detail = SWT.TRAVERSE_TAB_NEXT;
        pane.notifyListeners(SWT.Traverse, tab);
        assertTrue(tab.doit);
        chart.moveCursorTo(13);
        Event escape = new Event();
        escape.detail = SWT.TRAVERSE_ESCAPE;
        pane.notifyListeners(SWT.Traverse, escape);
        assertFalse(escape.doit);
        assertTrue(chart.setFocus());
        assertSame(pane, Display.getDefault().getFocusControl());
    }
}
