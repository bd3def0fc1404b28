// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** What a change of a list does to the ids of its rows. */
final class RowIds {
    private RowIds() {}

    /**
     * Refuses a change that gives a row an id which another row has. What was double before may stay.
     *
     * @throws IllegalArgumentException with a sentence for the user
     */
    static <R> void refuseDoubles(List<R> before, List<R> after, Function<R, String> id) {
        Set<String> doubleBefore = doubles(before, id);
        for (String each : doubles(after, id)) {
            if (!doubleBefore.contains(each)) {
                throw new IllegalArgumentException(Texts.text("table.id.taken", each));
            }
        }
    }

    private static <R> Set<String> doubles(List<R> rows, Function<R, String> id) {
        Set<String> seen = new HashSet<>();
        Set<String> doubles = new HashSet<>();
        for (R row : rows) {
            if (!seen.add(id.apply(row))) {
                doubles.add(id.apply(row));
            }
        }
        return doubles;
    }

    /** Returns the new id for each id that was changed in its place; rows that moved or went keep out of it. */
    static <R> Map<String, String> renamed(List<R> before, List<R> after, Function<R, String> id) {
        Map<String, String> renamed = new HashMap<>();
        if (before.size() != after.size()) {
            return renamed;
        }
        Set<String> old = new HashSet<>(before.stream().map(id).toList());
        Set<String> now = new HashSet<>(after.stream().map(id).toList());
        for (int index = 0; index < before.size(); index++) {
            String was = id.apply(before.get(index));
            String is = id.apply(after.get(index));
            if (!now.contains(was) && !old.contains(is)) {
                renamed.put(was, is);
            }
        }
        return renamed;
    }
}
