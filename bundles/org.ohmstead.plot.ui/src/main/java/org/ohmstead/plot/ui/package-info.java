// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The chart of the workbench: one control that draws an {@link org.ohmstead.plot.Plot} sharply at any scale, lets the
 * user zoom, pan, read values off under a crosshair, hide series, copy and export, by mouse and by keyboard.
 *
 * <pre>{@code
 * ChartCanvas chart = new ChartCanvas(parent, SWT.NONE);
 * chart.show(PlotSource.of(plot));
 * chart.addPointListener(point -> desk.choose(entryOf(point)));
 * }</pre>
 */
package org.ohmstead.plot.ui;
