// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

/**
 * The two edges of a band at one x.
 *
 * @param x the place along the x axis, in its unit; finite
 * @param lower the lower edge, in the unit of y; finite, at most {@code upper}
 * @param upper the upper edge, in the unit of y; finite
 */
public record BandPoint(double x, double lower, double upper) {
    /** Checks the parameters. */
    public BandPoint {
        Checks.finite("x", x);
        Checks.finite("lower", lower);
        Checks.finite("upper", upper);
        if (lower > upper) {
            throw new IllegalArgumentException(
                    "lower must be at most upper but is " + lower + " above " + upper + " at x = " + x + ".");
        }
    }
}
