// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Shows a network: as a schematic of data that a screen or an SVG writer draws, and as a list by which a technician wires it.
 *
 * <pre>{@code
 * NetworkDrawing drawing = NetworkDrawing.of(network, OptionalDouble.of(300));
 * String svg = NetworkSvg.write(drawing, NetworkSvg.Look.LIGHT);
 * String steps = WiringList.of(network, WiringList.Use.of(300)).text();
 * }</pre>
 */
package org.ohmstead.load.drawing;
