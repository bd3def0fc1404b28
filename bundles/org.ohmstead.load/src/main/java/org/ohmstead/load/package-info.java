// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Load design: from a stock of resistors to a network of known value that takes the power. A {@link org.ohmstead.load.Network} is
 * series and parallel connections of {@link org.ohmstead.load.Resistor}s, written as the trade does.
 *
 * <pre>{@code
 * Network network = NetworkNotation.parse("(8R2||8R2||15)+(3R3||0R47)", stock);
 * NetworkAnalysis analysis = NetworkAnalysis.of(network, 25);
 * OptionalDouble limitWatts = analysis.powerLimitWatts();
 * }</pre>
 */
package org.ohmstead.load;
