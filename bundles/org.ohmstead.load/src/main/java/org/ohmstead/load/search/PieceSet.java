// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The pieces of a set, numbered through, and the ways to strap shapes with them. */
final class PieceSet {
    private final int[] firstOfKind;
    private final int[] kindOf;
    private final int branchCount;

    PieceSet(int[] counts, int branchCount) {
        this.branchCount = branchCount;
        firstOfKind = new int[counts.length + 1];
        for (int kind = 0; kind < counts.length; kind++) {
            firstOfKind[kind + 1] = firstOfKind[kind] + counts[kind];
        }
        kindOf = new int[firstOfKind[counts.length]];
        for (int kind = 0; kind < counts.length; kind++) {
            Arrays.fill(kindOf, firstOfKind[kind], firstOfKind[kind + 1], kind);
        }
    }

    /** A shape with its pieces: for each resistor twice its piece, plus one when it is turned round. */
    record Placed(StrapShape shape, int[] pieces, Wiring wiring) {}

    int size() {
        return kindOf.length;
    }

    int kind(int piece) {
        return kindOf[piece];
    }

    /** Returns the number of a piece among its kind, from 1. */
    int number(int piece) {
        return piece - firstOfKind[kindOf[piece]] + 1;
    }

    /** Returns the kind of each end; each terminal is a kind of its own. */
    int[] endKinds() {
        int[] kinds = new int[2 * size() + 2 * branchCount];
        for (int end = 0; end < kinds.length; end++) {
            kinds[end] = end < 2 * size() ? kindOf[end / 2] : firstOfKind.length + end - 2 * size();
        }
        return kinds;
    }

    Placed place(StrapShape shape, int[] pieces) {
        return new Placed(shape, pieces, Wiring.of(shape.networks(), pieces, size(), branchCount));
    }

    /** Places a shape with the pieces that the order gives first for each kind; an order holds all pieces, turned round or not. */
    Placed placeFirst(StrapShape shape, List<Integer> order) {
        List<Integer> left = new ArrayList<>(order);
        int[] pieces = new int[shape.kinds().length];
        for (int leaf = 0; leaf < pieces.length; leaf++) {
            int kind = shape.kinds()[leaf];
            Integer piece = left.stream()
                    .filter(candidate -> kindOf[candidate / 2] == kind)
                    .findFirst()
                    .orElseThrow();
            left.remove(piece);
            pieces[leaf] = piece;
        }
        return place(shape, pieces);
    }

    /** Returns the pieces in order, not turned round. */
    List<Integer> inOrder() {
        List<Integer> order = new ArrayList<>();
        for (int piece = 0; piece < size(); piece++) {
            order.add(2 * piece);
        }
        return order;
    }

    /** Returns all different wirings of a shape, or more than a limit of them when it has more. */
    List<Placed> all(StrapShape shape, int limit) {
        Map<Wiring, Placed> found = new LinkedHashMap<>();
        collect(shape, new int[shape.kinds().length], 0, limit, found);
        return List.copyOf(found.values());
    }

    private void collect(StrapShape shape, int[] pieces, int leaf, int limit, Map<Wiring, Placed> found) {
        if (found.size() > limit) {
            return;
        }
        if (leaf == pieces.length) {
            Placed placed = place(shape, pieces.clone());
            found.putIfAbsent(placed.wiring(), placed);
            return;
        }
        int kind = shape.kinds()[leaf];
        for (int piece = firstOfKind[kind]; piece < firstOfKind[kind + 1]; piece++) {
            if (!uses(pieces, leaf, piece)) {
                for (int turn = 0; turn < 2; turn++) {
                    pieces[leaf] = 2 * piece + turn;
                    collect(shape, pieces, leaf + 1, limit, found);
                }
            }
        }
    }

    /** Returns straps with the same ends to move, in which no piece is turned round in the first that uses it: its ends change names. */
    List<Placed> straightFirst(List<Placed> straps) {
        boolean[] seen = new boolean[size()];
        int[] turn = new int[size()];
        List<Placed> straight = new ArrayList<>();
        for (Placed placed : straps) {
            int[] pieces = placed.pieces().clone();
            for (int leaf = 0; leaf < pieces.length; leaf++) {
                int piece = pieces[leaf] / 2;
                if (!seen[piece]) {
                    seen[piece] = true;
                    turn[piece] = pieces[leaf] % 2;
                }
                pieces[leaf] ^= turn[piece];
            }
            straight.add(place(placed.shape(), pieces));
        }
        return straight;
    }

    private static boolean uses(int[] pieces, int length, int piece) {
        for (int leaf = 0; leaf < length; leaf++) {
            if (pieces[leaf] / 2 == piece) {
                return true;
            }
        }
        return false;
    }
}
