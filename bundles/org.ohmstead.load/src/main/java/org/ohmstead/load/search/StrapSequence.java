// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** Finds the order of the loads and the pieces of each strap that leave few ends to move, for one set of pieces. */
final class StrapSequence {
    /**
     * An order found.
     *
     * @param loads loads in order
     * @param straps their straps
     * @param movedEnds ends to move in all
     * @param exact whether every order and every strapping has been accounted for
     */
    record Found(int[] loads, List<PieceSet.Placed> straps, int movedEnds, boolean exact) {}

    private static final int MOST_WIRINGS = 300;
    private static final long MOST_STEPS = 20_000_000;
    private static final int FAR = Integer.MAX_VALUE / 4;

    private final PieceSet set;
    private final List<List<StrapShape>> shapes;
    private final Stop stop;
    private final int[] endKinds;
    private final Map<StrapShape, Wiring> plain = new IdentityHashMap<>();

    StrapSequence(PieceSet set, List<List<StrapShape>> shapes, Stop stop) {
        this.set = set;
        this.shapes = shapes;
        this.stop = stop;
        endKinds = set.endKinds();
    }

    /** Finds the best order by going through all of them where that is few, otherwise a good one. */
    Found find() {
        List<PieceSet.Placed> wirings = new ArrayList<>();
        int[] loadOf = new int[MOST_WIRINGS];
        for (int load = 0; load < shapes.size(); load++) {
            for (StrapShape shape : shapes.get(load)) {
                for (PieceSet.Placed placed : set.all(shape, MOST_WIRINGS)) {
                    if (wirings.size() == MOST_WIRINGS) {
                        return improved();
                    }
                    loadOf[wirings.size()] = load;
                    wirings.add(placed);
                }
            }
        }
        long steps = (1L << shapes.size()) * wirings.size() * wirings.size();
        return steps > MOST_STEPS ? improved() : exact(wirings, loadOf);
    }

    /** Returns a lower bound of the ends to move: the best order when each load may choose anew for each neighbour. */
    int leastMovedEnds() {
        return ShortestPath.length(least());
    }

    private int[][] least() {
        int count = shapes.size();
        int[][] least = new int[count][count];
        for (int one = 0; one < count; one++) {
            for (int other = 0; other < one; other++) {
                least[one][other] = least(one, other);
                least[other][one] = least[one][other];
            }
        }
        return least;
    }

    private int least(int one, int other) {
        int least = FAR;
        for (StrapShape from : shapes.get(one)) {
            for (StrapShape to : shapes.get(other)) {
                least = Math.min(least, least(from, to));
            }
        }
        return least;
    }

    private int least(StrapShape from, StrapShape to) {
        if (from.text().equals(to.text())) {
            return 0;
        }
        if (stop.getAsBoolean()) {
            return 1;
        }
        Wiring before = plain.computeIfAbsent(from, this::plain);
        Wiring after = plain.computeIfAbsent(to, this::plain);
        return Math.max(1, Rewiring.leastMovedEnds(before, after, endKinds));
    }

    private Wiring plain(StrapShape shape) {
        return set.placeFirst(shape, set.inOrder()).wiring();
    }

    /** Goes through all subsets of loads done, and the last wiring of each. */
    private Found exact(List<PieceSet.Placed> wirings, int[] loadOf) {
        int count = wirings.size();
        int[][] moves = new int[count][count];
        for (int one = 0; one < count; one++) {
            for (int other = 0; other < one; other++) {
                moves[one][other] = new Rewiring(
                                wirings.get(one).wiring(), wirings.get(other).wiring())
                        .movedEnds();
                moves[other][one] = moves[one][other];
            }
        }
        int[] path = ShortestPath.throughGroups(moves, Arrays.copyOf(loadOf, count), shapes.size());
        List<PieceSet.Placed> straps = new ArrayList<>();
        int[] loads = new int[path.length];
        for (int step = 0; step < path.length; step++) {
            straps.add(wirings.get(path[step]));
            loads[step] = loadOf[path[step]];
        }
        return new Found(loads, straps, moved(straps), true);
    }

    /** Starts from the order of the lower bound and tries turning parts of it round until nothing gets better. */
    private Found improved() {
        int count = shapes.size();
        int[][] least = least();
        int[] groups = new int[count];
        Arrays.setAll(groups, load -> load);
        Found best = follow(ShortestPath.throughGroups(least, groups, count));
        int bound = ShortestPath.length(least);
        boolean better = true;
        while (better && best.movedEnds() > bound && !stop.getAsBoolean()) {
            better = false;
            for (int from = 0; from < count && !better; from++) {
                for (int to = from + 1; to < count && !better && !stop.getAsBoolean(); to++) {
                    Found found = follow(turned(best.loads(), from, to));
                    better = found.movedEnds() < best.movedEnds();
                    best = better ? found : best;
                }
            }
        }
        return best;
    }

    private static int[] turned(int[] order, int from, int to) {
        int[] turned = order.clone();
        for (int index = from; index <= to; index++) {
            turned[index] = order[from + to - index];
        }
        return turned;
    }

    /** Straps the loads in an order, each as near to the one before as it finds; the first in each of its shapes. */
    private Found follow(int[] order) {
        Found best = null;
        for (StrapShape first : shapes.get(order[0])) {
            List<PieceSet.Placed> straps = new ArrayList<>();
            straps.add(set.placeFirst(first, set.inOrder()));
            for (int step = 1; step < order.length; step++) {
                straps.add(nearest(straps.get(step - 1), order[step]));
            }
            int moved = moved(straps);
            if (best == null || moved < best.movedEnds()) {
                best = new Found(order.clone(), straps, moved, false);
            }
            if (stop.getAsBoolean()) {
                break;
            }
        }
        return best;
    }

    private PieceSet.Placed nearest(PieceSet.Placed before, int load) {
        PieceSet.Placed best = null;
        int moved = FAR;
        for (StrapShape shape : shapes.get(load)) {
            if (least(before.shape(), shape) < moved) {
                PieceSet.Placed placed = new PlacementClimb(set, before, stop).nearest(shape);
                int ends = new Rewiring(before.wiring(), placed.wiring()).movedEnds();
                if (ends < moved) {
                    moved = ends;
                    best = placed;
                }
            }
        }
        return best;
    }

    private static int moved(List<PieceSet.Placed> straps) {
        int moved = 0;
        for (int step = 1; step < straps.size(); step++) {
            moved +=
                    new Rewiring(straps.get(step - 1).wiring(), straps.get(step).wiring()).movedEnds();
        }
        return moved;
    }
}
