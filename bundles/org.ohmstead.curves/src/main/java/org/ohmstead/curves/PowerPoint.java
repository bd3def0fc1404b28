// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import org.ohmstead.curves.internal.Checks;

/**
 * One reading of output power.
 *
 * @param supplyVolts the direct voltage at the amplifier's terminals during the reading, greater than 0
 * @param powerWatts the average output power into the load, greater than 0
 * @param standardUncertaintyWatts the standard uncertainty of the power, greater than 0; it includes what the
 *     uncertainty of the supply voltage does to it
 * @param label what the reading is called; may be empty
 */
public record PowerPoint(double supplyVolts, double powerWatts, double standardUncertaintyWatts, String label) {

    /** Checks the ranges given above. */
    public PowerPoint {
        Checks.positive("supplyVolts", supplyVolts);
        Checks.positive("powerWatts", powerWatts);
        Checks.positive("standardUncertaintyWatts", standardUncertaintyWatts);
        if (label == null) {
            throw new IllegalArgumentException("label is missing but must be a text; an empty one is allowed.");
        }
    }
}
