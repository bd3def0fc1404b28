// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

/**
 * Where a search ended.
 *
 * @param slots the six values of {@link StageCurve}
 * @param free which of them were sought, rising
 * @param atBound for each of {@code free}, whether it ended on one of its bounds
 * @param chiSquared the weighted sum of squared residuals
 * @param normal the normal matrix J'WJ over {@code free}
 * @param covariance its inverse with zero rows for what ended on a bound; empty if singular
 * @param converged whether the search came to rest
 */
public record StageSolution(
        double[] slots,
        int[] free,
        boolean[] atBound,
        double chiSquared,
        double[][] normal,
        double[][] covariance,
        boolean converged) {

    /** Returns whether the search came to rest at a place that the readings determine. */
    public boolean usable() {
        return converged && covariance.length == free.length;
    }
}
