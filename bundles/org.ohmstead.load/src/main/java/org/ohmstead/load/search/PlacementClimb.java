// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;

/** Looks for the placement of a shape that leaves least to move from the strap before: by exchanging pieces and turning them round. */
final class PlacementClimb {
    private final PieceSet set;
    private final PieceSet.Placed before;
    private final BooleanSupplier stopped;

    PlacementClimb(PieceSet set, PieceSet.Placed before, BooleanSupplier stopped) {
        this.set = set;
        this.before = before;
        this.stopped = stopped;
    }

    PieceSet.Placed nearest(StrapShape shape) {
        PieceSet.Placed kept = climb(set.placeFirst(shape, keptFirst()));
        if (stopped.getAsBoolean()) {
            return kept;
        }
        PieceSet.Placed plain = climb(set.placeFirst(shape, set.inOrder()));
        return moved(plain) < moved(kept) ? plain : kept;
    }

    /** Returns the pieces in the order of the strap before, then the others. */
    private List<Integer> keptFirst() {
        List<Integer> order = new ArrayList<>();
        for (int piece : before.pieces()) {
            order.add(piece);
        }
        for (int piece : set.inOrder()) {
            if (!order.contains(piece) && !order.contains(piece ^ 1)) {
                order.add(piece);
            }
        }
        return order;
    }

    private PieceSet.Placed climb(PieceSet.Placed start) {
        PieceSet.Placed best = start;
        int moved = moved(best);
        boolean better = true;
        while (better) {
            better = false;
            for (int[] pieces : neighbours(best)) {
                if (stopped.getAsBoolean()) {
                    return best;
                }
                PieceSet.Placed next = set.place(best.shape(), pieces);
                int ends = moved(next);
                if (ends < moved) {
                    moved = ends;
                    best = next;
                    better = true;
                }
            }
        }
        return best;
    }

    /** Returns the placements with one piece turned round, or put in another's place, which may be in use or not. */
    private List<int[]> neighbours(PieceSet.Placed placed) {
        List<int[]> neighbours = new ArrayList<>();
        int[] pieces = placed.pieces();
        for (int leaf = 0; leaf < pieces.length; leaf++) {
            for (int other = 0; other < 2 * set.size(); other++) {
                if (set.kind(other / 2) == set.kind(pieces[leaf] / 2) && other != pieces[leaf]) {
                    neighbours.add(exchanged(pieces, leaf, other));
                }
            }
        }
        return neighbours;
    }

    private static int[] exchanged(int[] pieces, int leaf, int fresh) {
        int[] exchanged = pieces.clone();
        for (int index = 0; index < pieces.length; index++) {
            if (index != leaf && pieces[index] / 2 == fresh / 2) {
                exchanged[index] = pieces[leaf];
            }
        }
        exchanged[leaf] = fresh;
        return exchanged;
    }

    private int moved(PieceSet.Placed placed) {
        return new Rewiring(before.wiring(), placed.wiring()).movedEnds();
    }
}
