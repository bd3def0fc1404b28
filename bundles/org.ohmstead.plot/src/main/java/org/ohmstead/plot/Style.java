// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

/** How the points of a {@link Series} are drawn. */
public enum Style {
    /** A solid line through the points in their order, without markers. */
    LINE,
    /** A dashed line through the points in their order, for what was predicted rather than measured. */
    DASHED_LINE,
    /** A marker at each point and no line. */
    MARKERS,
    /** A marker at each point and a thin solid line through them. */
    LINE_AND_MARKERS,
    /** A thin vertical line from the bottom of the plot up to each point, for discrete spectra. */
    STEMS,
    /** A line whose area down to zero (to the bottom of the plot where zero is not shown) is tinted. */
    FILLED,
    /** A bar from zero (from the bottom on a log axis) to each point; bars of several series stand side by side. */
    BARS,
    /** As {@link #BARS}, but bars of several series at the same x stand on one another; values must not be negative. */
    STACKED_BARS;

    /** Returns whether each point carries the series' marker. */
    public boolean hasMarkers() {
        return this == MARKERS || this == LINE_AND_MARKERS;
    }

    /** Returns whether the points are joined by a line. */
    public boolean hasLine() {
        return this == LINE || this == DASHED_LINE || this == LINE_AND_MARKERS || this == FILLED;
    }

    /** Returns whether the points are drawn as bars. */
    public boolean hasBars() {
        return this == BARS || this == STACKED_BARS;
    }
}
