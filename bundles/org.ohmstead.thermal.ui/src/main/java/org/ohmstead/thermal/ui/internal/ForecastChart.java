// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotReadOut;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.thermal.plan.ScheduledJob;

/** The chart of the temperatures with the strip below it in line. */
final class ForecastChart {
    private static final double MINUTE = 60;
    private static final double LEAST_REVEALED_MINUTES = 3;
    private static final double REVEALED_SPANS = 4;

    private final ChartCanvas canvas;
    private OptionalDouble upperMinutes = OptionalDouble.empty();
    private boolean keepsWindow;

    ForecastChart(ChartCanvas canvas, ScheduleStrip strip) {
        this.canvas = canvas;
        Runnable noArea = canvas.addAreaListener(area -> {
            if (!strip.isDisposed()) {
                strip.setArea(area);
            }
        });
        Runnable noCursor = canvas.addCursorListener(readOut -> {
            if (!strip.isDisposed()) {
                strip.setCursorSeconds(seconds(readOut));
            }
        });
        canvas.addDisposeListener(event -> {
            noArea.run();
            noCursor.run();
        });
    }

    private static OptionalDouble seconds(Optional<PlotReadOut> readOut) {
        return readOut.isPresent() ? OptionalDouble.of(readOut.get().x() * MINUTE) : OptionalDouble.empty();
    }

    void style(ReadOutStyle style) {
        canvas.setReadOutStyle(style);
    }

    /**
     * Shows a forecast that has a schedule.
     *
     * @param dragging whether it is of what is being dragged, so that the time axis must not change under the pointer
     */
    void show(Forecast forecast, boolean dragging) {
        OptionalDouble upper = dragging ? upperMinutes : OptionalDouble.empty();
        // Drawn in the background, as the chart asks for it there.
        canvas.show((window, widthPixels) -> ForecastPlot.of(forecast, upper), keepsWindow);
        keepsWindow = true;
    }

    void showMessage(String sentence) {
        canvas.showMessage(sentence);
        keepsWindow = false;
    }

    /** The next forecast is shown whole. */
    void forgetZoom() {
        keepsWindow = false;
    }

    /** Keeps the time axis as it is while something is dragged. */
    void freeze() {
        if (upperMinutes.isEmpty() && canvas.window().isEmpty()) {
            upperMinutes = canvas.area()
                    .map(area -> OptionalDouble.of(area.x().upper()))
                    .orElse(OptionalDouble.empty());
        }
    }

    /** The time axis may change again. */
    void thaw() {
        upperMinutes = OptionalDouble.empty();
    }

    /** Puts the crosshair on a moment. */
    void point(double seconds) {
        canvas.moveCursorTo(seconds / MINUTE);
    }

    /** Zooms the time axis around a moment. */
    void zoom(double minutes, double factor) {
        canvas.area().ifPresent(area -> {
            double lower = minutes - (minutes - area.x().lower()) / factor;
            double upper = minutes + (area.x().upper() - minutes) / factor;
            show(lower, upper);
        });
    }

    /** Shows a step large, with what is around it. */
    void reveal(ScheduledJob job) {
        double from = (job.startSeconds() - job.restSeconds() - job.changeSeconds()) / MINUTE;
        double to = job.endSeconds() / MINUTE;
        double around = Math.max(LEAST_REVEALED_MINUTES, REVEALED_SPANS * (to - from));
        double middle = (from + to) / 2;
        show(Math.max(0, middle - around / 2), middle + around / 2);
    }

    private void show(double lower, double upper) {
        Optional<ViewWindow> now = canvas.window();
        canvas.zoomTo(new ViewWindow(
                lower,
                upper,
                now.map(ViewWindow::lowerY).orElse(OptionalDouble.empty()),
                now.map(ViewWindow::upperY).orElse(OptionalDouble.empty())));
    }
}
