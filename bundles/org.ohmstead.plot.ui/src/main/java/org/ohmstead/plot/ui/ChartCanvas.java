// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Layout;
import org.eclipse.swt.widgets.Menu;
import org.ohmstead.plot.chart.AxisMapping;
import org.ohmstead.plot.chart.ChartLayout;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.internal.ChartModel;
import org.ohmstead.plot.ui.internal.ChartPane;
import org.ohmstead.plot.ui.internal.ChartSaving;
import org.ohmstead.plot.ui.internal.LegendBar;
import org.ohmstead.plot.ui.internal.Picture;

/**
 * A chart to work with. The wheel zooms around the pointer (Ctrl: x only, Shift: y only), dragging zooms into a
 * rectangle, dragging with the middle button or with Alt or the space bar held pans, a double click shows the whole. By
 * keyboard: arrows pan, plus and minus zoom, zero, Home or Escape show the whole, Ctrl with left or right moves the
 * crosshair, with Shift too from point to point; comma and full stop move the line of {@link #setLine}. Pictures are drawn in the background. All methods are for the UI
 * thread.
 */
public final class ChartCanvas extends Composite {
    private static final int PREFERRED_WIDTH = 480;
    private static final int PREFERRED_HEIGHT = 300;
    private static final int LEAST_HEIGHT_OVER_LEGEND = 100;

    private final ChartModel model;
    private final ChartPane pane;
    private final LegendBar legend;
    private final ChartSaving saving;
    private final List<Runnable> waiting = new ArrayList<>();
    private final List<Consumer<Optional<ChartArea>>> areaListeners = new ArrayList<>();
    private Optional<ChartArea> toldArea = Optional.empty();

    /**
     * Makes an empty chart.
     *
     * @param style {@link SWT#BORDER} or {@link SWT#NONE}
     */
    public ChartCanvas(Composite parent, int style) {
        super(parent, style & SWT.BORDER);
        model = new ChartModel(this::changed, this::repaint);
        pane = new ChartPane(this, model, this::drawn);
        legend = new LegendBar(this, model, pane::look);
        saving = new ChartSaving(pane, model);
        saving.addMenu();
        super.setLayout(new PaneOverLegend());
        pane.setData("ohmstead.id", "chart.pane");
        legend.addListener(SWT.Paint, event -> pane.fillGround(event.gc, legend.getClientArea()));
    }

    /** Shows the plots of the source, the whole of them. */
    public void show(PlotSource source) {
        show(source, false);
    }

    /** Shows the plots of the source; with {@code keepWindow} zoom and crosshair stay. */
    public void show(PlotSource source, boolean keepWindow) {
        checkWidget();
        model.show(Objects.requireNonNull(source, "source"), keepWindow);
    }

    /** Shows a sentence instead of a plot: what to do so that there will be one. */
    public void showMessage(String sentence) {
        checkWidget();
        model.showMessage(Objects.requireNonNull(sentence, "sentence"));
    }

    /** Returns the sentence that is shown instead of a plot. */
    public Optional<String> message() {
        return model.message();
    }

    /** Returns what is in view; empty for the whole. */
    public Optional<ViewWindow> window() {
        return model.window();
    }

    /** Brings the window into view, as near as the plot allows: at most its whole width and height. */
    public void zoomTo(ViewWindow window) {
        checkWidget();
        model.zoomTo(Optional.of(window));
    }

    /** Brings the whole plot into view. */
    public void resetZoom() {
        checkWidget();
        model.zoomTo(Optional.empty());
    }

    /** Returns where the area between the axes is on the screen now; empty while no plot is drawn. */
    public Optional<ChartArea> area() {
        return model.source().isEmpty() ? Optional.empty() : model.picture().map(this::area);
    }

    private ChartArea area(Picture picture) {
        ChartLayout layout = picture.layout();
        int left = (int) Math.round(layout.left());
        int top = (int) Math.round(layout.top());
        Rectangle bounds = new Rectangle(
                left + pane.getLocation().x,
                top + pane.getLocation().y,
                (int) Math.round(layout.left() + layout.width()) - left,
                (int) Math.round(layout.top() + layout.height()) - top);
        AxisMapping x = layout.x();
        double shift = pane.getLocation().x;
        return new ChartArea(
                bounds,
                new AxisMapping(x.scale(), x.lower(), x.upper(), x.lowerPosition() + shift, x.upperPosition() + shift));
    }

    /** Adds a listener that gets the area between the axes each time it is drawn elsewhere or shows another part; the result takes it away. */
    public Runnable addAreaListener(Consumer<Optional<ChartArea>> listener) {
        areaListeners.add(Objects.requireNonNull(listener, "listener"));
        return () -> areaListeners.remove(listener);
    }

    private void tellArea() {
        Optional<ChartArea> now = area();
        if (!now.equals(toldArea)) {
            toldArea = now;
            List.copyOf(areaListeners).forEach(each -> each.accept(now));
        }
    }

    /** Returns the values under the crosshair; empty while there is none. */
    public Optional<PlotReadOut> readOut() {
        return model.readOut();
    }

    /** Writes the numbers along the axes and under the crosshair in a style; without it in that of the language spoken. */
    public void setReadOutStyle(ReadOutStyle style) {
        checkWidget();
        model.setReadOutStyle(Objects.requireNonNull(style, "style"));
    }

    /** Puts the crosshair on x, in the unit of the x axis. */
    public void moveCursorTo(double x) {
        checkWidget();
        model.setCursor(OptionalDouble.of(x), Optional.empty());
    }

    /**
     * Puts a line across the height on x, which the user can drag, or takes it away. It lies over the plot and is not in
     * saved pictures.
     *
     * @param x in the unit of the x axis
     */
    public void setLine(OptionalDouble x) {
        checkWidget();
        model.setLine(Objects.requireNonNull(x, "x"));
    }

    /** Returns where the line stands that the user can drag. */
    public OptionalDouble line() {
        return model.line();
    }

    /** Adds a listener that gets the place of the line each time the user moves it; the result takes it away. */
    public Runnable addLineListener(DoubleConsumer listener) {
        return model.addLineListener(Objects.requireNonNull(listener, "listener"));
    }

    /** Returns whether the series or band of the name is shown; true for a name that is not in the plot. */
    public boolean seriesVisible(String name) {
        return !model.hidden().contains(name);
    }

    /** Shows or hides the series and bands of the name, as its toggle in the legend does. */
    public void setSeriesVisible(String name, boolean visible) {
        checkWidget();
        model.setVisible(name, visible);
    }

    /** Adds a listener that gets the read-out each time it changes; the result takes it away. */
    public Runnable addCursorListener(Consumer<Optional<PlotReadOut>> listener) {
        return model.addCursorListener(Objects.requireNonNull(listener, "listener"));
    }

    /** Adds a listener for clicks on data points; the result takes it away. */
    public Runnable addPointListener(Consumer<ChosenPoint> listener) {
        return model.addPointListener(Objects.requireNonNull(listener, "listener"));
    }

    /** Puts the chart, as on paper, on the clipboard as a picture; it is drawn in the background. */
    public void copyPicture() {
        checkWidget();
        saving.copyPicture();
    }

    /** Puts the numbers in view on the clipboard as a table. */
    public void copyData() {
        checkWidget();
        saving.copyData();
    }

    /**
     * Writes the chart in view to a file before returning.
     *
     * @param file its name ends in .svg, .png, .pdf or .csv
     * @throws IOException if the name ends otherwise, no plot is shown, or the file cannot be written
     */
    public void export(Path file) throws IOException {
        checkWidget();
        saving.export(file);
    }

    /** Draws in these colours; without it they follow the brightness of the background around the chart. */
    public void setLook(ChartLook look) {
        checkWidget();
        pane.setLook(Objects.requireNonNull(look, "look"));
    }

    /** Calls once when the picture of the latest state is on the screen; for tests. */
    public void whenDrawn(Runnable action) {
        checkWidget();
        waiting.add(action);
        getDisplay().asyncExec(this::tellDrawn);
    }

    /** Returns how many pictures were drawn so far. */
    int picturesDrawn() {
        return pane.picturesDrawn();
    }

    /** Returns the latest picture. */
    Optional<Picture> picture() {
        return model.picture();
    }

    @Override
    public boolean setFocus() {
        return pane.setFocus();
    }

    @Override
    public void setLayout(Layout layout) {
        throw new IllegalStateException("A chart arranges its own parts.");
    }

    /** The chart's own colours follow those around it. */
    @Override
    public void setBackground(Color colour) {
        super.setBackground(colour);
        repaint();
        if (legend != null) {
            redrawLegend();
        }
    }

    /** The chart's own texts have about the size of this font, so that they suit those around it. */
    @Override
    public void setFont(Font font) {
        super.setFont(font);
        if (legend != null) {
            pane.setFont(font);
            legend.setFont(font);
            pane.refresh();
            layout();
        }
    }

    @Override
    public void setMenu(Menu menu) {
        pane.setMenu(menu);
    }

    private void changed() {
        if (!isDisposed() && pane != null) {
            if (model.source().isEmpty() && legend.clear()) {
                layout();
            }
            pane.refresh();
            repaint();
            redrawLegend();
            tellArea();
        }
    }

    private void redrawLegend() {
        legend.redraw();
        for (Control each : legend.getChildren()) {
            each.redraw();
        }
    }

    private void repaint() {
        if (pane != null && !pane.isDisposed()) {
            pane.redraw();
        }
    }

    private void drawn() {
        model.picture().ifPresent(picture -> {
            if (legend.show(picture.plot())) {
                layout();
            }
            legend.redraw();
        });
        tellArea();
        tellDrawn();
    }

    private void tellDrawn() {
        if (!isDisposed() && !waiting.isEmpty() && pane.settled()) {
            pane.update();
            List<Runnable> due = List.copyOf(waiting);
            waiting.clear();
            due.forEach(Runnable::run);
        }
    }

    /** The pane takes what the legend leaves; where that would be too little, the legend leaves it all. */
    private final class PaneOverLegend extends Layout {
        @Override
        protected Point computeSize(Composite composite, int widthHint, int heightHint, boolean flushCache) {
            return new Point(
                    widthHint == SWT.DEFAULT ? PREFERRED_WIDTH : widthHint,
                    heightHint == SWT.DEFAULT ? PREFERRED_HEIGHT : heightHint);
        }

        @Override
        protected void layout(Composite composite, boolean flushCache) {
            Rectangle area = getClientArea();
            int wanted = legend.isEmpty() ? 0 : legend.computeSize(area.width, SWT.DEFAULT).y;
            int below = area.height - wanted < LEAST_HEIGHT_OVER_LEGEND ? 0 : wanted;
            pane.setBounds(area.x, area.y, area.width, area.height - below);
            legend.setBounds(area.x, area.y + area.height - below, area.width, below);
        }
    }
}
