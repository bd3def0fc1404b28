// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import org.ohmstead.plot.Plot;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;

/** Shows plots. */
final class Charts {
    private Charts() {}

    /** Shows a plot; its zoom stays where {@code keepWindow} says so. */
    static void show(ChartCanvas chart, Plot plot, boolean keepWindow) {
        chart.show(PlotSource.of(plot), keepWindow);
        // Entries of the legend that take the place of as many others of the same size are not placed by themselves.
        chart.whenDrawn(() -> chart.layout(true, true));
    }
}
