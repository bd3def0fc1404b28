// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.ohmstead.load.Network;

/**
 * Which ends are joined. The ends of piece p are 2p and 2p + 1, behind those of all pieces come the terminals, two for each branch. Each
 * end has a node, named by the lowest end in it.
 */
final class Wiring {
    private final int[] nodes;

    private Wiring(int[] nodes) {
        this.nodes = nodes;
    }

    /**
     * Wires branches.
     *
     * @param networks the branches
     * @param pieces for each resistor of all branches, from left to right, twice its piece, plus one when it is turned round
     * @param pieceCount pieces of the set
     * @param branchCount branches that any load has
     */
    static Wiring of(List<Network> networks, int[] pieces, int pieceCount, int branchCount) {
        int[] parents = new int[2 * pieceCount + 2 * branchCount];
        for (int end = 0; end < parents.length; end++) {
            parents[end] = end;
        }
        int[] next = {0};
        for (int branch = 0; branch < networks.size(); branch++) {
            int terminal = 2 * pieceCount + 2 * branch;
            join(networks.get(branch), terminal, terminal + 1, new Placement(parents, pieces, next));
        }
        for (int end = 0; end < parents.length; end++) {
            parents[end] = root(parents, end);
        }
        return new Wiring(parents);
    }

    int ends() {
        return nodes.length;
    }

    int node(int end) {
        return nodes[end];
    }

    /** Returns the other ends of the node of an end. */
    List<Integer> others(int end) {
        List<Integer> others = new ArrayList<>();
        for (int other = 0; other < nodes.length; other++) {
            if (other != end && nodes[other] == nodes[end]) {
                others.add(other);
            }
        }
        return others;
    }

    int nodeCount() {
        int count = 0;
        for (int end = 0; end < nodes.length; end++) {
            count += nodes[end] == end ? 1 : 0;
        }
        return count;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Wiring wiring && Arrays.equals(nodes, wiring.nodes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(nodes);
    }

    private record Placement(int[] parents, int[] pieces, int[] next) {}

    private static void join(Network network, int from, int to, Placement placement) {
        if (network instanceof Network.Parallel parallel) {
            parallel.members().forEach(member -> join(member, from, to, placement));
        } else if (network instanceof Network.Series series) {
            List<Network> members = series.members();
            int start = from;
            for (int index = 0; index < members.size(); index++) {
                boolean last = index == members.size() - 1;
                int end = last ? to : outEnd(members.get(index), placement);
                join(members.get(index), start, end, placement);
                start = end;
            }
        } else {
            int piece = placement.pieces[placement.next[0]];
            placement.next[0]++;
            unite(placement.parents, from, piece);
            unite(placement.parents, to, piece ^ 1);
        }
    }

    /** Returns the end at which the first resistor of a network in parallel, or it itself, goes out to what follows. */
    private static int outEnd(Network network, Placement placement) {
        Network inner = network;
        int last = placement.next[0];
        while (inner instanceof Network.Parallel parallel) {
            inner = parallel.members().get(0);
            if (inner instanceof Network.Series series) {
                // The end of its last member is the same node.
                int before = inner.resistors().size()
                        - series.members()
                                .get(series.members().size() - 1)
                                .resistors()
                                .size();
                last += before;
                inner = series.members().get(series.members().size() - 1);
            }
        }
        return placement.pieces[last] ^ 1;
    }

    private static void unite(int[] parents, int one, int other) {
        int first = root(parents, one);
        int second = root(parents, other);
        parents[Math.max(first, second)] = Math.min(first, second);
    }

    private static int root(int[] parents, int end) {
        int root = end;
        while (parents[root] != root) {
            root = parents[root];
        }
        return root;
    }
}
