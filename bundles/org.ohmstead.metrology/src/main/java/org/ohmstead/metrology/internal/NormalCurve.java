// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import org.hipparchus.special.Erf;

/** The standard normal distribution. */
public final class NormalCurve {

    private static final double ROOT_TWO = Math.sqrt(2);
    private static final double PEAK = 1 / Math.sqrt(2 * Math.PI);

    private NormalCurve() {}

    /** Returns the density at z. */
    public static double density(double z) {
        return PEAK * Math.exp(-z * z / 2);
    }

    /** Returns the fraction below z, exact in either tail; z may be infinite. */
    public static double below(double z) {
        if (Double.isInfinite(z)) {
            return z > 0 ? 1 : 0;
        }
        return Erf.erfc(-z / ROOT_TWO) / 2;
    }

    /** Returns the fraction between two points, lower first; either may be infinite. */
    public static double between(double lower, double upper) {
        return lower > 0 ? below(-lower) - below(-upper) : below(upper) - below(lower);
    }
}
