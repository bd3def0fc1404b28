// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Before when each job cannot begin, as its predecessors and their change-overs take time; step 3 of {@link
 * SequenceBound}.
 */
final class EarliestBegins {
    /** More jobs than that are looked at without their change-overs, for the sake of time. */
    private static final int MOST_JOBS = 250;

    private final OrderTable table;
    private final double[] onSeconds;
    private final double[][] shortest;
    private final double[] first;

    EarliestBegins(OrderTable table, double[] onSeconds) {
        this.table = table;
        this.onSeconds = onSeconds;
        shortest = new double[table.jobs][];
        for (int from = 0; from < table.jobs; from++) {
            shortest[from] = table.between[from].clone();
        }
        first = table.first.clone();
        for (int via = 0; via < table.jobs && table.jobs <= MOST_JOBS; via++) {
            for (int to = 0; to < table.jobs; to++) {
                first[to] = Math.min(first[to], first[via] + shortest[via][to]);
                for (int from = 0; from < table.jobs; from++) {
                    shortest[from][to] = Math.min(shortest[from][to], shortest[from][via] + shortest[via][to]);
                }
            }
        }
    }

    double[] seconds() {
        double[] earliest = new double[table.jobs];
        for (int job = 0; job < table.jobs; job++) {
            List<Integer> group = new ArrayList<>();
            double seconds = table.leastRest[job];
            for (int other = 0; other < table.jobs; other++) {
                if (table.precedence.before(other, job)) {
                    group.add(other);
                    seconds += onSeconds[other] + table.leastRest[other];
                }
            }
            group.add(job);
            earliest[job] = seconds + (table.jobs <= MOST_JOBS ? changes(group) : 0);
        }
        return earliest;
    }

    private double changes(List<Integer> group) {
        int root = group.size();
        double[][] cost = new double[root + 1][root + 1];
        for (double[] row : cost) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        for (int to = 0; to < root; to++) {
            int later = group.get(to);
            for (int from = 0; from < root; from++) {
                if (table.precedence.canFollow(group.get(from), later)) {
                    cost[from][to] = shortest[group.get(from)][later];
                }
            }
            if (table.precedence.canBeFirst(later)) {
                cost[root][to] = first[later];
            }
        }
        int[] parent = Arborescence.cheapest(cost, root);
        double sum = 0;
        for (int to = 0; to < root; to++) {
            sum += cost[parent[to]][to];
        }
        return sum;
    }
}
