// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Finds load networks. {@link org.ohmstead.load.search.NetworkSearch} gives the series-parallel networks nearest to a resistance from the
 * resistors at hand, exactly; {@link org.ohmstead.load.search.BankPlan} chooses one set of pieces and the strapping of each load of a
 * test plan.
 *
 * <pre>{@code
 * SearchResult found = NetworkSearch.run(SearchRequest.of(stock, 4, 5), () -> false, done -> {});
 * Candidate best = found.candidates().get(0);
 * }</pre>
 */
package org.ohmstead.load.search;
