// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Measurement uncertainty, least-squares fits and verdicts: the numbers behind every figure that is compared with a
 * limit. Uncertainties follow the GUM (JCGM 100) and its Monte Carlo supplement (JCGM 101), which are set against each
 * other by {@link org.ohmstead.metrology.MethodComparison}; verdicts and their risks follow JCGM 106.
 * Everything is immutable; uncertainties are standard uncertainties unless a name says <em>expanded</em>.
 *
 * <pre>{@code
 * UncertaintyBudget budget = UncertaintyBudget.of(100.0,
 *         new Contribution("output voltage", 10.0, 0.0750555, Double.POSITIVE_INFINITY),
 *         new Contribution("load resistance", -25.0, 0.0230940, Double.POSITIVE_INFINITY));
 * Estimate powerWatts = budget.combined();
 * double expandedWatts = powerWatts.expandedUncertainty(0.95);
 * Assessment assessment = Conformity.assessAtLeast(powerWatts, 95.0, new DecisionRule.GuardedAcceptance(0.95));
 * }</pre>
 */
package org.ohmstead.metrology;
