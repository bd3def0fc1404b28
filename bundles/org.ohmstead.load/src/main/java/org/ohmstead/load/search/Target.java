// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

/**
 * The resistance wanted.
 *
 * @param ohms as a double
 * @param exact as an exact number of units
 */
record Target(double ohms, Fraction exact) {
    static Target of(double ohms, Kinds kinds) {
        return new Target(ohms, Fraction.ofDecimal(ohms).times(kinds.unitsPerOhm()));
    }

    /** Returns whether a network's |error| is at most a limit, exactly. */
    boolean within(Find find, double limitRatio) {
        double error = Math.abs(find.errorRatio);
        if (Math.abs(error - limitRatio) > 2 * Features.ROUNDING_RATIO * (1 + error)) {
            return error < limitRatio;
        }
        return find.distance().compareTo(exact.times(Fraction.ofDecimal(limitRatio))) <= 0;
    }
}
