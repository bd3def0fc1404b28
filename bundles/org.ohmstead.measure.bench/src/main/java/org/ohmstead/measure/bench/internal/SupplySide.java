// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.function.DoubleFunction;

/**
 * The bench's supply with its cable.
 *
 * @param cableOhms there and back
 * @param limitAmps current at which it limits
 * @param highestVolts most that it gives at its own sockets
 * @param sensing whether it holds the terminals' volts, not those of its sockets
 */
record SupplySide(double cableOhms, double limitAmps, double highestVolts, boolean sensing) {
    private static final int STEPS = 24;
    private static final double LEAST_VOLTS = 0.5;

    /** Finds the terminals' volts at which what the amplifier takes and what the supply gives are the same. */
    OperatingPoint solve(double setVolts, DoubleFunction<OperatingPoint> amplifier) {
        OperatingPoint top = amplifier.apply(setVolts);
        if (fits(top, setVolts)) {
            return top;
        }
        double low = LEAST_VOLTS;
        double high = setVolts;
        OperatingPoint best = amplifier.apply(low);
        for (int i = 0; i < STEPS && high - low > 1e-5; i++) {
            OperatingPoint middle = amplifier.apply((low + high) / 2);
            if (fits(middle, setVolts)) {
                low = middle.terminalVolts();
                best = middle;
            } else {
                high = middle.terminalVolts();
            }
        }
        return best;
    }

    /** Whether the supply can hold the terminals at these volts while they give that current. */
    private boolean fits(OperatingPoint point, double setVolts) {
        double socketVolts = point.terminalVolts() + cableOhms * point.supplyAmps();
        double mostVolts = sensing ? highestVolts : Math.min(setVolts, highestVolts);
        return point.supplyAmps() <= limitAmps && socketVolts <= mostVolts + 1e-9;
    }
}
