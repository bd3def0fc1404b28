// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import org.ohmstead.metrology.internal.Checks;

/**
 * An interval that contains the quantity with a stated probability.
 *
 * @param lower the lower end, not above the upper one
 * @param upper the upper end
 * @param probability the coverage probability, strictly between 0 and 1
 */
public record CoverageInterval(double lower, double upper, double probability) {

    /** Checks the ranges given above. */
    public CoverageInterval {
        Checks.finite("lower", lower);
        Checks.finite("upper", upper);
        Checks.probability("probability", probability);
        if (lower > upper) {
            throw new IllegalArgumentException("lower is " + lower + " but must not be above upper, " + upper + ".");
        }
    }

    /** Returns upper - lower. */
    public double width() {
        return upper - lower;
    }

    /** Returns whether the value lies within the interval, ends included. */
    public boolean contains(double value) {
        return value >= lower && value <= upper;
    }
}
