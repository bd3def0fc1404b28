// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ohmstead.load.drawing.NetworkDrawing.Place;
import org.ohmstead.load.drawing.NetworkDrawing.Wire;

/** Joins wires end to end where exactly two of the same current meet, so that they are drawn without a seam. */
final class WireRuns {
    private static final double SAME_RATIO = 1e-9;

    private final Map<Place, List<Wire>> atPlace = new HashMap<>();
    private final Set<Wire> taken = new HashSet<>();

    private WireRuns(List<Wire> wires) {
        for (Wire wire : wires) {
            atPlace.computeIfAbsent(wire.start(), place -> new ArrayList<>()).add(wire);
            atPlace.computeIfAbsent(wire.end(), place -> new ArrayList<>()).add(wire);
        }
    }

    static List<Wire> of(List<Wire> wires) {
        WireRuns runs = new WireRuns(wires);
        List<Wire> joined = new ArrayList<>();
        for (Wire wire : wires) {
            if (runs.taken.add(wire)) {
                joined.add(runs.from(wire));
            }
        }
        return joined;
    }

    private Wire from(Wire wire) {
        Deque<Place> places = new ArrayDeque<>(wire.places());
        for (Wire next = next(wire, places.getLast()); next != null; next = next(next, places.getLast())) {
            Place end = places.getLast();
            List<Place> more = next.places();
            if (next.start().equals(end)) {
                more.subList(1, more.size()).forEach(places::addLast);
            } else {
                for (int i = more.size() - 2; i >= 0; i--) {
                    places.addLast(more.get(i));
                }
            }
        }
        for (Wire next = next(wire, places.getFirst()); next != null; next = next(next, places.getFirst())) {
            Place start = places.getFirst();
            List<Place> more = next.places();
            if (next.end().equals(start)) {
                for (int i = more.size() - 2; i >= 0; i--) {
                    places.addFirst(more.get(i));
                }
            } else {
                more.subList(1, more.size()).forEach(places::addFirst);
            }
        }
        return new Wire(List.copyOf(places), wire.currentRatio());
    }

    /** Returns the other wire at a place when there is just one, of the same current and not drawn yet; else null. */
    private Wire next(Wire wire, Place place) {
        List<Wire> meeting = atPlace.get(place);
        if (meeting.size() != 2) {
            return null;
        }
        Wire other = meeting.get(0).equals(wire) ? meeting.get(1) : meeting.get(0);
        boolean same = Math.abs(other.currentRatio() - wire.currentRatio()) < SAME_RATIO;
        return same && taken.add(other) ? other : null;
    }
}
