// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The uncertainty budget of any reading of the log, old or new: by the law of propagation (GUM, JCGM 100) with effective degrees of freedom
 * and a coverage factor from Student's t distribution, and by Monte Carlo (JCGM 101) from the same parts beside it. For example:
 *
 * <pre>{@code
 * ReadingBudget budget = ReadingBudget.of(reading, reading.weakestChannel());
 * CoverageInterval interval = budget.interval(0.95);
 * for (BudgetLine line : budget.lines()) {
 *     // line.source(), line.effectWatts(), line.varianceShare() ...
 * }
 * Optional<String> note = budget.monteCarlo(0.95, ReadingBudget.USUAL_SEED).note("W");
 * }</pre>
 */
package org.ohmstead.testlog.budget;
