// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** The rows of a table in their original order, and those of them that are shown, in the order in which they are. */
final class Lines<R> {
    private final TableSpec<R> spec;
    private final Set<Line<R>> kept = Collections.newSetFromMap(new IdentityHashMap<>());
    private List<Line<R>> all = List.of();
    private List<Line<R>> visible = List.of();
    private List<String> words = List.of();
    private int sortColumn = -1;
    private boolean descending;

    Lines(TableSpec<R> spec) {
        this.spec = spec;
    }

    List<Line<R>> all() {
        return all;
    }

    List<Line<R>> visible() {
        return visible;
    }

    List<R> rows() {
        return all.stream().map(Line::row).toList();
    }

    /** Returns whether the rows stand in their original order and none is hidden. */
    boolean original() {
        return sortColumn < 0 && words.isEmpty();
    }

    boolean filtered() {
        return !words.isEmpty();
    }

    int sortColumn() {
        return sortColumn;
    }

    boolean descending() {
        return descending;
    }

    /** Shows only rows in whose cells each word of the text occurs, whatever its case. */
    void filter(String text) {
        words = text.isBlank()
                ? List.of()
                : Arrays.asList(text.strip().toLowerCase(Locale.ROOT).split("\\s+"));
        kept.clear();
        arrange();
    }

    /** Goes on to the next order by a column: upwards, downwards, the original one. */
    void sortBy(int column) {
        if (sortColumn != column) {
            sortColumn = column;
            descending = false;
        } else if (!descending) {
            descending = true;
        } else {
            sortColumn = -1;
            descending = false;
        }
        arrange();
    }

    /** Keeps a line in sight, whatever the filter says, until the filter changes. */
    void keep(Line<R> line) {
        kept.add(line);
    }

    /**
     * Puts other rows in place. A line goes on with the row that is equal to its own, else with the one of the same key, else, where as many
     * rows vanished as came, with the one in its place.
     *
     * @return the lines whose row is another one now
     */
    Set<Line<R>> replace(List<R> newRows) {
        List<Line<R>> next = new ArrayList<>(Collections.nCopies(newRows.size(), null));
        List<Line<R>> left = new ArrayList<>(all);
        takeInPlace(newRows, next, left);
        takeBy(row -> row, newRows, next, left);
        takeBy(spec.key(), newRows, next, left);
        long missing = next.stream().filter(line -> line == null).count();
        boolean exchange = missing == left.size();
        Set<Line<R>> changed = Collections.newSetFromMap(new IdentityHashMap<>());
        int taken = 0;
        for (int index = 0; index < newRows.size(); index++) {
            R row = newRows.get(index);
            Line<R> line = next.get(index);
            if (line == null) {
                line = exchange ? left.get(taken++) : new Line<>(row);
                next.set(index, line);
                changed.add(line);
            } else if (!line.row().equals(row)) {
                changed.add(line);
            }
            line.put(row);
        }
        all = List.copyOf(next);
        kept.retainAll(lineSet());
        arrange();
        return changed;
    }

    private Set<Line<R>> lineSet() {
        Set<Line<R>> lines = Collections.newSetFromMap(new IdentityHashMap<>());
        lines.addAll(all);
        return lines;
    }

    private void takeInPlace(List<R> newRows, List<Line<R>> next, List<Line<R>> left) {
        int oldSize = all.size();
        int newSize = newRows.size();
        int front = 0;
        while (front < Math.min(oldSize, newSize) && all.get(front).row().equals(newRows.get(front))) {
            next.set(front, all.get(front));
            front++;
        }
        int back = 0;
        while (back < Math.min(oldSize, newSize) - front
                && all.get(oldSize - 1 - back).row().equals(newRows.get(newSize - 1 - back))) {
            next.set(newSize - 1 - back, all.get(oldSize - 1 - back));
            back++;
        }
        left.clear();
        left.addAll(all.subList(front, oldSize - back));
    }

    private void takeBy(Function<R, Object> trait, List<R> newRows, List<Line<R>> next, List<Line<R>> left) {
        Map<Object, Deque<Line<R>>> known = new HashMap<>();
        left.forEach(line -> known.computeIfAbsent(trait.apply(line.row()), any -> new ArrayDeque<>())
                .add(line));
        Set<Line<R>> taken = Collections.newSetFromMap(new IdentityHashMap<>());
        for (int index = 0; index < newRows.size(); index++) {
            Deque<Line<R>> candidates = next.get(index) == null ? known.get(trait.apply(newRows.get(index))) : null;
            if (candidates != null && !candidates.isEmpty()) {
                Line<R> line = candidates.remove();
                next.set(index, line);
                taken.add(line);
            }
        }
        left.removeIf(taken::contains);
    }

    /** Works out anew which lines are shown, in which order. */
    void arrange() {
        List<Line<R>> shown = new ArrayList<>();
        for (Line<R> line : all) {
            if (words.isEmpty() || kept.contains(line) || matches(line.row())) {
                shown.add(line);
            }
        }
        if (sortColumn >= 0) {
            Comparator<R> order = spec.columns().get(sortColumn).order();
            Comparator<R> wanted = descending ? order.reversed() : order;
            shown.sort((one, other) -> wanted.compare(one.row(), other.row()));
        }
        visible = List.copyOf(shown);
    }

    private boolean matches(R row) {
        StringBuilder cells = new StringBuilder();
        for (Column<R> column : spec.columns()) {
            cells.append(column.shown().apply(row))
                    .append(' ')
                    .append(column.unit())
                    .append('\n');
        }
        String haystack = cells.toString().toLowerCase(Locale.ROOT);
        return words.stream().allMatch(haystack::contains);
    }
}
