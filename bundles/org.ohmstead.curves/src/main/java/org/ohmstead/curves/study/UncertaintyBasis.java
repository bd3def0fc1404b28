// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

/** What the uncertainties of a study come from. */
public enum UncertaintyBasis {
    /** The readings' own uncertainties, taken as known. */
    READINGS,
    /** The scatter about the curve, with n-p degrees of freedom. */
    SCATTER,
    /**
     * The readings' own, unless the scatter is so much larger that chance explains it in less than one case in twenty
     * (chi-squared test); then the scatter.
     */
    READINGS_UNLESS_CONTRADICTED
}
