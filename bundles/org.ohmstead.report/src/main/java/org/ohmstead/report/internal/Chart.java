// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import org.ohmstead.plot.Plot;

/**
 * A chart at its place in the sheet.
 *
 * @param id unique in the sheet
 * @param plot what is drawn
 * @param widthPixels width in CSS pixels
 * @param heightPixels height in CSS pixels
 * @param svg the drawing as an SVG element; empty where it is drawn later
 */
public record Chart(String id, Plot plot, int widthPixels, int heightPixels, String svg) {}
