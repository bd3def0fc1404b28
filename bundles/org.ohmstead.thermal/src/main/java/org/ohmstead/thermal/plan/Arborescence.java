// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Arrays;

/**
 * The cheapest tree that reaches every node from a root along arcs (Chu and Liu 1965, Edmonds 1967), by contracting
 * rings.
 */
final class Arborescence {
    private Arborescence() {}

    /**
     * Returns the parent of each node, -1 for the root.
     *
     * @param cost from the node of the row to that of the column; infinite where there is no arc. Every node has to be
     *     reachable.
     * @param root number of the root
     */
    static int[] cheapest(double[][] cost, int root) {
        int nodes = cost.length;
        int[] parent = cheapestArcs(cost, root);
        int[] group = new int[nodes];
        int groups = group(parent, root, group);
        if (groups == nodes) {
            return parent;
        }
        double[][] outer = new double[groups][groups];
        int[][] from = new int[groups][groups];
        int[][] to = new int[groups][groups];
        for (double[] row : outer) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        int[] members = new int[groups];
        for (int each : group) {
            members[each]++;
        }
        for (int u = 0; u < nodes; u++) {
            for (int v = 0; v < nodes; v++) {
                if (group[u] == group[v] || Double.isInfinite(cost[u][v])) {
                    continue;
                }
                // Entering a ring saves the arc of the ring that led to the node entered.
                double price = cost[u][v] - (members[group[v]] > 1 ? cost[parent[v]][v] : 0);
                if (price < outer[group[u]][group[v]]) {
                    outer[group[u]][group[v]] = price;
                    from[group[u]][group[v]] = u;
                    to[group[u]][group[v]] = v;
                }
            }
        }
        int[] outerParent = cheapest(outer, group[root]);
        for (int each = 0; each < groups; each++) {
            if (outerParent[each] >= 0) {
                parent[to[outerParent[each]][each]] = from[outerParent[each]][each];
            }
        }
        return parent;
    }

    private static int[] cheapestArcs(double[][] cost, int root) {
        int[] parent = new int[cost.length];
        Arrays.fill(parent, -1);
        for (int v = 0; v < cost.length; v++) {
            for (int u = 0; v != root && u < cost.length; u++) {
                boolean better = parent[v] < 0 || cost[u][v] < cost[parent[v]][v];
                if (u != v && better && !Double.isInfinite(cost[u][v])) {
                    parent[v] = u;
                }
            }
        }
        return parent;
    }

    /** Gives all nodes of a ring one number, every other node its own, and returns how many numbers there are. */
    private static int group(int[] parent, int root, int[] group) {
        int nodes = parent.length;
        int[] seenBy = new int[nodes];
        Arrays.fill(seenBy, -1);
        Arrays.fill(group, -1);
        int groups = 0;
        for (int start = 0; start < nodes; start++) {
            int at = start;
            while (at >= 0 && at != root && seenBy[at] < 0) {
                seenBy[at] = start;
                at = parent[at];
            }
            if (at >= 0 && at != root && seenBy[at] == start && group[at] < 0) {
                for (int member = at; group[member] < 0; member = parent[member]) {
                    group[member] = groups;
                }
                groups++;
            }
        }
        for (int node = 0; node < nodes; node++) {
            if (group[node] < 0) {
                group[node] = groups++;
            }
        }
        return groups;
    }
}
