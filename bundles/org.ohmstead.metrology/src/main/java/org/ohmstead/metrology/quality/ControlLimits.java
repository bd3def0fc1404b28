// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import org.ohmstead.metrology.internal.Checks;

/**
 * The three lines of a control chart, all in the unit of what is charted.
 *
 * @param lower the lower control limit, not above the centre
 * @param centre the centre line
 * @param upper the upper control limit, not below the centre
 */
public record ControlLimits(double lower, double centre, double upper) {

    /** Checks the order given above. */
    public ControlLimits {
        Checks.finite("lower", lower);
        Checks.finite("centre", centre);
        Checks.finite("upper", upper);
        if (lower > centre || centre > upper) {
            throw new IllegalArgumentException(
                    "lower, centre and upper are " + lower + ", " + centre + " and " + upper + " but must ascend.");
        }
    }

    /** Returns whether the value lies outside the limits; on a limit is inside. */
    public boolean excludes(double value) {
        return value < lower || value > upper;
    }
}
