// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.plot.Plot;

/**
 * Gives the plot for what is in view. It is asked again after each zoom or pan, away from the UI thread, and must give
 * equal axes labels and series names whatever is in view.
 */
@FunctionalInterface
public interface PlotSource {
    /**
     * Returns the plot.
     *
     * @param window what is in view; empty for everything
     * @param widthPixels how many pixels wide it will be drawn; a long record may be thinned to suit. {@link
     *     Integer#MAX_VALUE} where every sample is wanted, as for export as a table
     */
    Plot plot(Optional<ViewWindow> window, int widthPixels);

    /**
     * Returns the exact value of a series at x where the plots it gives are thinned; empty where the plot itself has it.
     * Asked in the UI thread: it must answer at once.
     *
     * @param seriesName name of the series as in its plots
     * @param x where
     */
    default OptionalDouble valueAt(String seriesName, double x) {
        return OptionalDouble.empty();
    }

    /** Returns a source that gives the same plot for every window. */
    static PlotSource of(Plot plot) {
        Objects.requireNonNull(plot, "plot");
        return (window, widthPixels) -> plot;
    }
}
