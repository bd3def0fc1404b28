// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.load.Stock;

/** Goes through everything that a bank plan may be, for very small banks; it shares nothing with the planner but the networks. */
final class BankBruteForce {
    private final Stock stock;
    private final List<BankPlanRequest.Load> loads;
    private final int mostParts;
    private final int branches;

    BankBruteForce(Stock stock, List<BankPlanRequest.Load> loads, int mostParts) {
        this.stock = stock;
        this.loads = loads;
        this.mostParts = mostParts;
        branches = loads.stream().mapToInt(BankPlanRequest.Load::branches).max().orElseThrow();
    }

    /** Returns the number of pieces of the smallest set and the fewest ends to move with a set so small. */
    int[] fewestPiecesAndMoves() {
        int kinds = stock.items().size();
        int fewest = Integer.MAX_VALUE;
        int moves = Integer.MAX_VALUE;
        int sets = 1;
        for (Stock.Item item : stock.items()) {
            sets *= item.count() + 1;
        }
        for (int code = 1; code < sets; code++) {
            int[] counts = new int[kinds];
            int rest = code;
            for (int kind = 0; kind < kinds; kind++) {
                counts[kind] = rest % (stock.items().get(kind).count() + 1);
                rest /= stock.items().get(kind).count() + 1;
            }
            int pieces = Arrays.stream(counts).sum();
            List<List<List<Set<Integer>>>> wirings = wirings(counts);
            if (pieces > fewest || wirings.stream().anyMatch(List::isEmpty)) {
                continue;
            }
            int best = order(wirings, new ArrayList<>(), new HashSet<>());
            moves = pieces < fewest ? best : Math.min(moves, best);
            fewest = pieces;
        }
        return new int[] {fewest, moves};
    }

    private List<List<List<Set<Integer>>>> wirings(int[] counts) {
        List<Integer> kindOf = new ArrayList<>();
        for (int kind = 0; kind < counts.length; kind++) {
            for (int piece = 0; piece < counts[kind]; piece++) {
                kindOf.add(kind);
            }
        }
        List<List<List<Set<Integer>>>> wirings = new ArrayList<>();
        for (BankPlanRequest.Load load : loads) {
            List<List<Set<Integer>>> found = new ArrayList<>();
            List<Set<Integer>> alone = new ArrayList<>();
            for (int end = 0; end < 2 * kindOf.size() + 2 * branches; end++) {
                alone.add(Set.of(end));
            }
            branch(load, 0, 0, alone, kindOf, found);
            wirings.add(found);
        }
        return wirings;
    }

    /** Adds a branch made of any unused pieces. */
    private void branch(
            BankPlanRequest.Load load,
            int branch,
            int used,
            List<Set<Integer>> nodes,
            List<Integer> kindOf,
            List<List<Set<Integer>>> found) {
        if (branch == load.branches()) {
            found.add(nodes);
            return;
        }
        int terminal = 2 * kindOf.size() + 2 * branch;
        for (int subset = 1; subset < 1 << kindOf.size(); subset++) {
            if ((subset & used) == 0 && Integer.bitCount(subset) <= mostParts && smallest(subset, load, kindOf)) {
                for (List<Set<Integer>> wired :
                        joined(subset, terminal, terminal + 1, nodes, kindOf, load.nominalOhms(), 0)) {
                    branch(load, branch + 1, used | subset, wired, kindOf, found);
                }
            }
        }
    }

    private boolean smallest(int subset, BankPlanRequest.Load load, List<Integer> kindOf) {
        for (int part = (subset - 1) & subset; part > 0; part = (part - 1) & subset) {
            if (values(part, kindOf, 0).stream().anyMatch(value -> near(value, load.nominalOhms()))) {
                return false;
            }
        }
        return true;
    }

    private static boolean near(double value, double ohms) {
        return Math.abs(value / ohms - 1) < 1e-6;
    }

    private double ohms(int kind) {
        return stock.items().get(kind).resistor().ohms();
    }

    /** Returns the values of a subset; sort 1 for series outermost, 2 for parallel, 0 for both. */
    private List<Double> values(int subset, List<Integer> kindOf, int sort) {
        List<Double> values = new ArrayList<>();
        if (Integer.bitCount(subset) == 1) {
            return List.of(ohms(kindOf.get(Integer.numberOfTrailingZeros(subset))));
        }
        for (int part = (subset - 1) & subset; part > 0; part = (part - 1) & subset) {
            for (double one : values(part, kindOf, 0)) {
                for (double other : values(subset & ~part, kindOf, 0)) {
                    if (sort != 2) {
                        values.add(one + other);
                    }
                    if (sort != 1) {
                        values.add(1 / (1 / one + 1 / other));
                    }
                }
            }
        }
        return values;
    }

    /** Returns the nodes after joining a subset between two ends in every way that gives a resistance; 0 takes any. */
    private List<List<Set<Integer>>> joined(
            int subset,
            int from,
            int to,
            List<Set<Integer>> nodes,
            List<Integer> kindOf,
            double wantedOhms,
            int depth) {
        List<List<Set<Integer>>> all = new ArrayList<>();
        if (Integer.bitCount(subset) == 1) {
            int piece = Integer.numberOfTrailingZeros(subset);
            if (near(ohms(kindOf.get(piece)), wantedOhms)) {
                all.add(merge(merge(nodes, from, 2 * piece), to, 2 * piece + 1));
                all.add(merge(merge(nodes, from, 2 * piece + 1), to, 2 * piece));
            }
            return all;
        }
        for (int part = (subset - 1) & subset; part > 0; part = (part - 1) & subset) {
            for (double one : new HashSet<>(values(part, kindOf, 0))) {
                for (double other : new HashSet<>(values(subset & ~part, kindOf, 0))) {
                    if (near(1 / (1 / one + 1 / other), wantedOhms)) {
                        for (List<Set<Integer>> first : joined(part, from, to, nodes, kindOf, one, depth + 1)) {
                            all.addAll(joined(subset & ~part, from, to, first, kindOf, other, depth + 1));
                        }
                    }
                    if (near(one + other, wantedOhms)) {
                        // A new node between: a mark below 0 that is taken away afterwards.
                        int mark = -1 - depth;
                        List<Set<Integer>> marked = new ArrayList<>(nodes);
                        marked.add(Set.of(mark));
                        for (List<Set<Integer>> first : joined(part, from, mark, marked, kindOf, one, depth + 1)) {
                            for (List<Set<Integer>> both :
                                    joined(subset & ~part, mark, to, first, kindOf, other, depth + 1)) {
                                all.add(without(both, mark));
                            }
                        }
                    }
                }
            }
        }
        return all;
    }

    private static List<Set<Integer>> merge(List<Set<Integer>> nodes, int one, int other) {
        List<Set<Integer>> merged = new ArrayList<>();
        Set<Integer> union = new HashSet<>();
        for (Set<Integer> node : nodes) {
            if (node.contains(one) || node.contains(other)) {
                union.addAll(node);
            } else {
                merged.add(node);
            }
        }
        merged.add(union);
        return merged;
    }

    private static List<Set<Integer>> without(List<Set<Integer>> nodes, int mark) {
        return nodes.stream()
                .map(node -> {
                    Set<Integer> rest = new HashSet<>(node);
                    rest.remove(mark);
                    return rest;
                })
                .toList();
    }

    private int order(List<List<List<Set<Integer>>>> wirings, List<List<Set<Integer>>> before, Set<Integer> done) {
        if (done.size() == wirings.size()) {
            return 0;
        }
        int best = Integer.MAX_VALUE / 2;
        for (int load = 0; load < wirings.size(); load++) {
            if (done.add(load)) {
                for (List<Set<Integer>> wiring : new HashSet<>(wirings.get(load))) {
                    int step = before.isEmpty() ? 0 : moves(before.get(before.size() - 1), wiring);
                    if (step < best) {
                        before.add(wiring);
                        best = Math.min(best, step + order(wirings, before, done));
                        before.remove(before.size() - 1);
                    }
                }
                done.remove(load);
            }
        }
        return best;
    }

    /** All ends less the most that can stay when every old node goes on as one new node at most, by trying all. */
    private static int moves(List<Set<Integer>> before, List<Set<Integer>> after) {
        int ends = before.stream().mapToInt(Set::size).sum();
        return ends - staying(before, after, 0, new boolean[after.size()]);
    }

    private static int staying(List<Set<Integer>> before, List<Set<Integer>> after, int index, boolean[] taken) {
        if (index == before.size()) {
            return 0;
        }
        int best = staying(before, after, index + 1, taken);
        for (int node = 0; node < after.size(); node++) {
            int target = node;
            int shared = (int) before.get(index).stream()
                    .filter(after.get(target)::contains)
                    .count();
            if (!taken[node] && shared > 0) {
                taken[node] = true;
                best = Math.max(best, shared + staying(before, after, index + 1, taken));
                taken[node] = false;
            }
        }
        return best;
    }
}
