// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import org.ohmstead.metrology.Estimate;

/**
 * A value found by a fit.
 *
 * @param parameter which one
 * @param estimate the value with its uncertainty, in the parameter's unit
 * @param atBound whether it ended on a bound; it then counts as fixed and has no uncertainty
 */
public record FittedParameter(StageParameter parameter, Estimate estimate, boolean atBound) {}
