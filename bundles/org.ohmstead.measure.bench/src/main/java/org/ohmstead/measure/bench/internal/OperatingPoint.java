// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

/**
 * Averages of a feed that has run long enough for the rails, not for the heat.
 *
 * @param terminalVolts direct volts at the amplifier's terminals
 * @param supplyAmps supply current
 * @param outputWatts of all channels together
 * @param highestVolts largest output of a channel, without its noise
 */
record OperatingPoint(double terminalVolts, double supplyAmps, double outputWatts, double highestVolts) {
    /** What stays in the amplifier as heat. */
    double heatWatts() {
        return Math.max(0, terminalVolts * supplyAmps - outputWatts);
    }
}
