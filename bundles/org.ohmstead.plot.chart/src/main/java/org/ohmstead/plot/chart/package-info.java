// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Draws an {@link org.ohmstead.plot.Plot} off screen: onto any {@link java.awt.Graphics2D}, as an SVG element for a web
 * page, or as a PNG. No window system is needed; a caller without one sets {@code java.awt.headless=true}.
 *
 * <pre>{@code
 * ChartRenderer renderer = new ChartRenderer(ChartFonts.standard());
 * String svg = renderer.toSvg(plot, 560, 340, SvgOptions.responsive("power"));
 * byte[] png = renderer.toPng(plot, 560, 340, 2.0);
 * ChartLayout layout = renderer.draw(plot, graphics, 560, 340);
 * double watts = layout.y().toValue(mouseY);
 * }</pre>
 */
package org.ohmstead.plot.chart;
