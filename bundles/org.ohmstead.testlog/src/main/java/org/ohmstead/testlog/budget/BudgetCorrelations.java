// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.metrology.UncertaintyBudget.Correlation;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.UncertaintyPart;

/**
 * Which parts of a channel move together.
 *
 * @param pairs those that count
 * @param contradictory whether the reading's coefficients contradict one another, so that none counts
 */
record BudgetCorrelations(List<Correlation> pairs, boolean contradictory) {
    private static final double ROUNDING = 1e-9;

    BudgetCorrelations {
        pairs = List.copyOf(pairs);
    }

    /** Returns those of a channel; one that names no part, or a pair for the second time, tells nothing. */
    static BudgetCorrelations of(ChannelReading channel) {
        List<String> names = channel.uncertaintyParts().stream()
                .map(UncertaintyPart::source)
                .distinct()
                .toList();
        Set<Set<String>> seen = new HashSet<>();
        List<Correlation> found = new ArrayList<>();
        for (PartCorrelation each : channel.correlations()) {
            Set<String> pair = Set.of(each.first(), each.second());
            if (names.containsAll(pair) && seen.add(pair)) {
                found.add(new Correlation(each.first(), each.second(), each.coefficient()));
            }
        }
        return possible(names, found) ? new BudgetCorrelations(found, false) : new BudgetCorrelations(List.of(), true);
    }

    /** Returns whether the matrix of the coefficients is positive semidefinite, by Cholesky's decomposition. */
    private static boolean possible(List<String> names, List<Correlation> pairs) {
        double[][] rest = new double[names.size()][names.size()];
        for (int i = 0; i < rest.length; i++) {
            rest[i][i] = 1;
        }
        for (Correlation pair : pairs) {
            int i = names.indexOf(pair.first());
            int j = names.indexOf(pair.second());
            rest[i][j] = pair.coefficient();
            rest[j][i] = pair.coefficient();
        }
        for (int step = 0; step < rest.length; step++) {
            if (rest[step][step] < -ROUNDING) {
                return false;
            }
            boolean spent = rest[step][step] <= ROUNDING;
            for (int i = step + 1; i < rest.length; i++) {
                if (spent && Math.abs(rest[i][step]) > Math.sqrt(ROUNDING)) {
                    return false;
                }
                for (int j = step + 1; j < rest.length && !spent; j++) {
                    rest[i][j] -= rest[i][step] * rest[step][j] / rest[step][step];
                }
            }
        }
        return true;
    }
}
