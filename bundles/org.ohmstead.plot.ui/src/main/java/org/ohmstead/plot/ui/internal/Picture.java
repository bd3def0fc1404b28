// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.List;
import org.eclipse.swt.graphics.ImageData;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.chart.ChartLayout;
import org.ohmstead.plot.chart.ChartRanges;

/**
 * A drawn chart with all that is needed to work on it.
 *
 * @param request what was asked for
 * @param plot the plot with the axes in view and every series, hidden ones too
 * @param visible the same without the hidden ones
 * @param home what the axes show when nothing is zoomed
 * @param layout where things are, in unscaled pixels
 * @param tracks the visible series, ready for look-up
 * @param pixels the picture at the scale asked for
 */
public record Picture(
        Request request,
        Plot plot,
        Plot visible,
        ChartRanges home,
        ChartLayout layout,
        List<Track> tracks,
        ImageData pixels) {
    /** Copies the tracks. */
    public Picture {
        tracks = List.copyOf(tracks);
    }
}
