// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

/** Where the size of a fit's uncertainties comes from. */
public enum CovarianceBasis {
    /**
     * The standard uncertainties given with the observations are only relative weights; the scatter about the fitted
     * curve sets the scale: covariance = (JᵀWJ)⁻¹ RSS/(n-p), with n-p degrees of freedom. Needs more observations than
     * parameters.
     */
    RESIDUAL_SCATTER,
    /**
     * The standard uncertainties given with the observations are right as they are: covariance = (JᵀWJ)⁻¹ with W =
     * 1/u², with infinite degrees of freedom.
     */
    GIVEN_UNCERTAINTIES
}
