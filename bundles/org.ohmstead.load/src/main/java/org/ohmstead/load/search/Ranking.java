// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/** The nearest different resistances met so far, each with its best networks. */
final class Ranking {
    private static final Comparator<List<Find>> BY_DISTANCE_THEN_BEST = Comparator.<List<Find>, Fraction>comparing(
                    value -> value.get(0).distance())
            .thenComparing(value -> value.get(0), Find.BEST_FIRST);

    private final int valuesWanted;
    private final int networksPerValue;
    private final double limitRatio;
    private final List<List<Find>> values = new ArrayList<>();

    /** Makes an empty one for so many values and so many networks of each, with |error| up to a limit. */
    Ranking(int valuesWanted, int networksPerValue, double limitRatio) {
        this.valuesWanted = valuesWanted;
        this.networksPerValue = networksPerValue;
        this.limitRatio = limitRatio;
    }

    /** Returns the greatest |error| that can still enter. */
    double boundRatio() {
        return values.size() < valuesWanted
                ? limitRatio
                : Math.abs(values.get(valuesWanted - 1).get(0).errorRatio);
    }

    void offer(Find find) {
        int place = Collections.binarySearch(
                values, List.of(find), Comparator.comparing(value -> value.get(0), Find::compareValue));
        if (place >= 0) {
            add(values.get(place), find);
            return;
        }
        if (~place > valuesWanted) {
            return;
        }
        values.add(~place, new ArrayList<>(List.of(find)));
        // Two resistances can lie equally far from the target; which of them goes is for the end to say.
        while (values.size() > valuesWanted && beyond(values.get(valuesWanted - 1), values.get(values.size() - 1))) {
            values.remove(values.size() - 1);
        }
    }

    /** Returns the networks in order. */
    List<Find> finds() {
        return values.stream()
                .sorted(BY_DISTANCE_THEN_BEST)
                .limit(valuesWanted)
                .flatMap(List::stream)
                .toList();
    }

    private void add(List<Find> value, Find find) {
        boolean full = value.size() == networksPerValue;
        if (full && Find.BEST_FIRST.compare(find, value.get(networksPerValue - 1)) >= 0) {
            return;
        }
        if (value.stream()
                .anyMatch(other -> other.parts == find.parts && other.text().equals(find.text()))) {
            return;
        }
        value.add(find);
        value.sort(Find.BEST_FIRST);
        if (full) {
            value.remove(networksPerValue);
        }
    }

    private static boolean beyond(List<Find> last, List<Find> further) {
        return further.get(0).distance().compareTo(last.get(0).distance()) > 0;
    }
}
