// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.Optional;
import java.util.Set;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ViewWindow;

/**
 * All that a picture depends on; equal requests give equal pictures.
 *
 * @param source what gives the plot
 * @param window what is in view; empty for everything
 * @param width width in pixels of the unscaled screen
 * @param height height in pixels of the unscaled screen
 * @param zoomPercent scale of the monitor; 100 is unscaled
 * @param pixelsOfPoint how many unscaled pixels one point of the chart has
 * @param look the colours
 * @param hidden names of series and bands that are left out
 * @param decimalComma whether the numbers along the axes have a decimal comma instead of a point
 */
public record Request(
        PlotSource source,
        Optional<ViewWindow> window,
        int width,
        int height,
        int zoomPercent,
        double pixelsOfPoint,
        ChartLook look,
        Set<String> hidden,
        boolean decimalComma) {
    /** Copies the names. */
    public Request {
        hidden = Set.copyOf(hidden);
    }

    /** Makes a request for a picture whose numbers have a decimal point. */
    public Request(
            PlotSource source,
            Optional<ViewWindow> window,
            int width,
            int height,
            int zoomPercent,
            double pixelsOfPoint,
            ChartLook look,
            Set<String> hidden) {
        this(source, window, width, height, zoomPercent, pixelsOfPoint, look, hidden, false);
    }

    /** Returns the same request with the decimal sign wanted. */
    Request withDecimalComma(boolean wanted) {
        return new Request(source, window, width, height, zoomPercent, pixelsOfPoint, look, hidden, wanted);
    }
}
