// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import org.hipparchus.distribution.continuous.FDistribution;

/** Fisher's F distribution, the ratio of two independent estimates of the same variance. */
public final class FisherF {

    private FisherF() {}

    /** Returns the probability of a ratio of at least numerator/denominator; a zero denominator is allowed. */
    public static double above(double numerator, double upperFreedom, double denominator, double lowerFreedom) {
        if (numerator <= 0) {
            return 1;
        }
        double ratio = numerator / denominator;
        if (!Double.isFinite(ratio)) {
            return 0;
        }
        // P(F(a, b) > x) = P(F(b, a) < 1/x), which keeps small probabilities exact.
        return new FDistribution(lowerFreedom, upperFreedom).cumulativeProbability(1 / ratio);
    }

    /** Returns the ratio that is exceeded with this probability. */
    public static double upperQuantile(double probability, double upperFreedom, double lowerFreedom) {
        return 1 / new FDistribution(lowerFreedom, upperFreedom).inverseCumulativeProbability(probability);
    }
}
