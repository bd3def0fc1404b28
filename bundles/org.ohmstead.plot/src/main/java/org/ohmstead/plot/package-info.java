// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Plots as plain data: what is to be shown, without any drawing. Calculating code builds a {@link
 * org.ohmstead.plot.Plot}; a renderer elsewhere turns it into a picture, and a test or an export can read the same
 * numbers that the picture shows.
 *
 * <pre>{@code
 * Plot plot = Plot.of("Power against supply", Axis.linear("Supply", "V"), Axis.linear("Power", "W").withRange(0, 500))
 *         .withSeries(Series.of("4 ohm, fitted", supplyVolts, fittedWatts, Style.LINE, 0))
 *         .withSeries(Series.withBars("4 ohm", testVolts, testWatts, expandedWatts, Style.MARKERS, 0))
 *         .withBand(Band.of("95 %", supplyVolts, lowWatts, highWatts, 0))
 *         .withMark(Mark.point(14.4, 75, "rated 75 W", MarkerShape.HOLLOW_DIAMOND, 0))
 *         .withMark(Mark.vertical(14.4, "14.4 V"));
 * }</pre>
 */
package org.ohmstead.plot;
