// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import org.ohmstead.curves.internal.Checks;

/**
 * A reading together with the load it was taken into.
 *
 * @param point the reading; its power is that of the whole load
 * @param loadOhms the load as connected, greater than 0
 * @param bridged whether two channels drive the load together, so that each sees half of it
 */
public record LoadedPoint(PowerPoint point, double loadOhms, boolean bridged) {

    /** Checks the ranges given above. */
    public LoadedPoint {
        Checks.positive("loadOhms", loadOhms);
    }

    /** Returns the load that one channel sees: half of it in bridged mode. */
    public double channelOhms() {
        return bridged ? loadOhms / 2 : loadOhms;
    }

    /** Returns how many channels share the power: 2 in bridged mode, else 1. */
    public int channels() {
        return bridged ? 2 : 1;
    }
}
