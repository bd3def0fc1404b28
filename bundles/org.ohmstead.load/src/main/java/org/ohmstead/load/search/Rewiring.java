// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The least number of ends to move from one wiring to another: all ends less those that can stay. At best each node of the new wiring
 * goes on from one old node, so those that can stay are the heaviest matching of old and new nodes by the ends they share; it is found by
 * the shortest augmenting paths of the assignment problem.
 */
final class Rewiring {
    private final Wiring before;
    private final Wiring after;
    private final int[] beforeIndex;
    private final int[] afterIndex;
    private final int[][] shared;
    private final int[] oldOfNew;
    private final int moved;

    Rewiring(Wiring before, Wiring after) {
        this.before = before;
        this.after = after;
        beforeIndex = new int[before.ends()];
        afterIndex = new int[before.ends()];
        int oldCount = number(before, beforeIndex);
        int newCount = number(after, afterIndex);
        int size = Math.max(oldCount, newCount);
        shared = new int[size][size];
        for (int end = 0; end < before.ends(); end++) {
            shared[afterIndex[end]][beforeIndex[end]]++;
        }
        oldOfNew = match(shared);
        int staying = 0;
        for (int node = 0; node < size; node++) {
            staying += shared[node][oldOfNew[node]];
        }
        moved = before.ends() - staying;
    }

    /**
     * Returns a lower bound of the ends to move when the pieces of a kind may be exchanged for one another and turned round at will: no
     * two nodes can share more ends than they have of the same kind.
     *
     * @param kinds for each end its kind; a terminal is a kind of its own
     */
    static int leastMovedEnds(Wiring before, Wiring after, int[] kinds) {
        int[] beforeIndex = new int[kinds.length];
        int[] afterIndex = new int[kinds.length];
        int size = Math.max(number(before, beforeIndex), number(after, afterIndex));
        int kindCount = Arrays.stream(kinds).max().orElse(0) + 1;
        int[][] ofBefore = new int[size][kindCount];
        int[][] ofAfter = new int[size][kindCount];
        for (int end = 0; end < kinds.length; end++) {
            ofBefore[beforeIndex[end]][kinds[end]]++;
            ofAfter[afterIndex[end]][kinds[end]]++;
        }
        int[][] most = new int[size][size];
        for (int node = 0; node < size; node++) {
            for (int old = 0; old < size; old++) {
                for (int kind = 0; kind < kindCount; kind++) {
                    most[node][old] += Math.min(ofAfter[node][kind], ofBefore[old][kind]);
                }
            }
        }
        int[] oldOfNew = match(most);
        int staying = 0;
        for (int node = 0; node < size; node++) {
            staying += most[node][oldOfNew[node]];
        }
        return kinds.length - staying;
    }

    int movedEnds() {
        return moved;
    }

    /** Returns the ends that move. */
    List<Integer> moves() {
        List<Integer> moves = new ArrayList<>();
        for (int end = 0; end < before.ends(); end++) {
            if (!stays(end)) {
                moves.add(end);
            }
        }
        return moves;
    }

    /** Returns whether an end stays where it is. */
    boolean stays(int end) {
        return oldOfNew[afterIndex[end]] == beforeIndex[end];
    }

    /** Returns whether a moved end is to be joined to nothing. */
    boolean alone(int end) {
        return after.others(end).isEmpty();
    }

    /**
     * Returns an end to join a moved one to, one that stays in its node when there is one; or -1 when it is to be alone, or when it is the
     * first of a node in which none stays: it is taken off, and the others are joined to it.
     */
    int partner(int end) {
        List<Integer> others = after.others(end);
        int first = others.stream().filter(this::stays).findFirst().orElse(others.isEmpty() ? end : others.get(0));
        return stays(first) || first < end ? first : -1;
    }

    /** Numbers the nodes from 0. */
    private static int number(Wiring wiring, int[] index) {
        int count = 0;
        for (int end = 0; end < index.length; end++) {
            int node = wiring.node(end);
            if (node == end) {
                index[end] = count;
                count++;
            } else {
                index[end] = index[node];
            }
        }
        return count;
    }

    /** Returns for each row the column it gets in an assignment of greatest weight, by row and column potentials. */
    private static int[] match(int[][] weights) {
        int size = weights.length;
        int[] rowPotential = new int[size + 1];
        int[] columnPotential = new int[size + 1];
        int[] rowOfColumn = new int[size + 1];
        for (int row = 1; row <= size; row++) {
            rowOfColumn[0] = row;
            augment(weights, rowPotential, columnPotential, rowOfColumn);
        }
        int[] columnOfRow = new int[size];
        for (int column = 1; column <= size; column++) {
            columnOfRow[rowOfColumn[column] - 1] = column - 1;
        }
        return columnOfRow;
    }

    private static void augment(int[][] weights, int[] rowPotential, int[] columnPotential, int[] rowOfColumn) {
        int size = weights.length;
        int[] least = new int[size + 1];
        int[] way = new int[size + 1];
        boolean[] used = new boolean[size + 1];
        Arrays.fill(least, Integer.MAX_VALUE);
        int column = 0;
        do {
            used[column] = true;
            int row = rowOfColumn[column];
            int step = Integer.MAX_VALUE;
            int nearest = 0;
            for (int next = 1; next <= size; next++) {
                if (!used[next]) {
                    int cost = -weights[row - 1][next - 1] - rowPotential[row] - columnPotential[next];
                    if (cost < least[next]) {
                        least[next] = cost;
                        way[next] = column;
                    }
                    if (least[next] < step) {
                        step = least[next];
                        nearest = next;
                    }
                }
            }
            for (int other = 0; other <= size; other++) {
                if (used[other]) {
                    rowPotential[rowOfColumn[other]] += step;
                    columnPotential[other] -= step;
                } else {
                    least[other] -= step;
                }
            }
            column = nearest;
        } while (rowOfColumn[column] != 0);
        while (column != 0) {
            rowOfColumn[column] = rowOfColumn[way[column]];
            column = way[column];
        }
    }
}
