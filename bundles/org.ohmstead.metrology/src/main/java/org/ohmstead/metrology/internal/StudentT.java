// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/** Student's t distribution whose degrees of freedom may be infinite (then it is the standard normal distribution). */
public final class StudentT {

    /** From here on the quantiles differ from the normal ones by less than 1e-6 relative at any confidence in use. */
    private static final double NORMAL_FROM_DEGREES_OF_FREEDOM = 1e7;

    private StudentT() {}

    /** Returns t such that a fraction {@code probability} of the distribution lies below t. */
    public static double quantile(double probability, double degreesOfFreedom) {
        if (degreesOfFreedom >= NORMAL_FROM_DEGREES_OF_FREEDOM) {
            return new NormalDistribution(0, 1).inverseCumulativeProbability(probability);
        }
        return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
    }

    /** Returns the fraction of the distribution that lies below t; t may be infinite. */
    public static double below(double t, double degreesOfFreedom) {
        if (Double.isInfinite(t)) {
            return t > 0 ? 1 : 0;
        }
        if (degreesOfFreedom >= NORMAL_FROM_DEGREES_OF_FREEDOM) {
            return new NormalDistribution(0, 1).cumulativeProbability(t);
        }
        return new TDistribution(degreesOfFreedom).cumulativeProbability(t);
    }
}
