// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The smallest sets of pieces from which each load can be made, one load at a time: for each kind a set holds the most that any load uses
 * of it. Found by branch and bound over the choices of the loads, those that need most first.
 */
final class PieceSets {
    private static final int MOST_SETS = 6;
    private static final int STOP_EVERY = 256;

    private final List<List<int[]>> choices;
    private final Stop stop;
    private final List<int[]> best = new ArrayList<>();
    private int bestPieces = Integer.MAX_VALUE;
    private int visits;
    private boolean complete = true;

    /**
     * Finds them.
     *
     * @param usages for each load the pieces of each kind that each of its choices uses
     */
    PieceSets(List<List<int[]>> usages, Stop stop) {
        this.stop = stop;
        choices = usages.stream()
                .map(load -> load.stream()
                        .sorted(Comparator.comparingInt(PieceSets::pieces))
                        .toList())
                .sorted(Comparator.comparingInt((List<int[]> load) -> pieces(load.get(0)))
                        .reversed())
                .toList();
        search(0, new int[choices.get(0).get(0).length]);
    }

    /** Returns smallest sets, a few of them when there are several. */
    List<int[]> sets() {
        return best;
    }

    /** Returns whether it is proven that no smaller one does. */
    boolean complete() {
        return complete;
    }

    private void search(int load, int[] need) {
        visits++;
        if (visits % STOP_EVERY == 0 && !best.isEmpty() && stop.getAsBoolean()) {
            complete = false;
        }
        if (!complete && !best.isEmpty()) {
            return;
        }
        if (load == choices.size()) {
            take(need);
            return;
        }
        List<int[]> next = new ArrayList<>();
        for (int[] usage : choices.get(load)) {
            int[] joined = joined(need, usage);
            if (next.stream().noneMatch(other -> Arrays.equals(other, joined))) {
                next.add(joined);
            }
        }
        next.sort(Comparator.comparingInt(PieceSets::pieces));
        for (int[] joined : next) {
            if (promising(load + 1, joined)) {
                search(load + 1, joined);
            }
        }
    }

    private boolean promising(int load, int[] need) {
        int room = best.size() == MOST_SETS ? bestPieces - 1 : bestPieces;
        if (pieces(need) > room) {
            return false;
        }
        for (int rest = load; rest < choices.size(); rest++) {
            if (choices.get(rest).stream().noneMatch(usage -> pieces(joined(need, usage)) <= room)) {
                return false;
            }
        }
        return true;
    }

    private void take(int[] need) {
        if (pieces(need) < bestPieces) {
            bestPieces = pieces(need);
            best.clear();
        }
        if (best.stream().noneMatch(other -> Arrays.equals(other, need))) {
            best.add(need);
        }
    }

    private static int[] joined(int[] need, int[] usage) {
        int[] joined = need.clone();
        for (int kind = 0; kind < joined.length; kind++) {
            joined[kind] = Math.max(joined[kind], usage[kind]);
        }
        return joined;
    }

    private static int pieces(int[] counts) {
        return Arrays.stream(counts).sum();
    }
}
