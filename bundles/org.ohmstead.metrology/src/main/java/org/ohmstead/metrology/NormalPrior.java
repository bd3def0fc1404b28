// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import org.ohmstead.metrology.internal.Checks;

/**
 * What is known about items before one of them is measured: their true values are normally distributed (JCGM 106:2012,
 * clause 6), as seen on many items of the same production.
 *
 * @param mean the mean of the true values
 * @param standardDeviation their standard deviation, greater than 0
 */
public record NormalPrior(double mean, double standardDeviation) {

    /** Checks the ranges given above. */
    public NormalPrior {
        Checks.finite("mean", mean);
        Checks.positive("standardDeviation", standardDeviation);
    }

    /** Returns the fraction of all items whose true value is allowed, 0 to 1. */
    public double conforming(ToleranceInterval tolerance) {
        return tolerance.probabilityWithin(Estimate.of(mean, standardDeviation));
    }

    /**
     * Returns what is known about one item after it was measured: the mean of prior and measured value weighted by
     * 1/u², with the standard uncertainty u0 u/sqrt(u0² + u²). The degrees of freedom of the measured value are not
     * used; its uncertainty is taken as exactly known.
     */
    public Estimate posterior(Estimate measured) {
        double priorVariance = standardDeviation * standardDeviation;
        double variance = measured.standardUncertainty() * measured.standardUncertainty();
        double weight = priorVariance / (priorVariance + variance);
        return Estimate.of(
                weight * measured.value() + (1 - weight) * mean, measured.standardUncertainty() * Math.sqrt(weight));
    }
}
