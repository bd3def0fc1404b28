// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.ToIntFunction;

/**
 * A crossed design made of values as they come: each row in each column equally often.
 *
 * @param rows their names
 * @param columns their names
 * @param repeats how many values each cell has, at least 2
 * @param cells the values by row, column and repeat
 */
record CrossedCells(List<String> rows, List<String> columns, int repeats, List<List<List<Double>>> cells) {
    private static final int FEWEST = 2;

    /** A value that belongs to a row and a column. */
    record Placed(String row, String column, double value) {}

    private record Place(String row, String column) {}

    /**
     * Returns a design of at least two rows and columns, or nothing. As long as a cell has fewer than two values, the row or column with
     * the most such cells is left out; then each cell keeps its newest values, as many as the poorest has.
     *
     * @param values the oldest first; a value without a name of its row or column does not count
     */
    static Optional<CrossedCells> of(List<Placed> values) {
        Map<Place, List<Double>> byPlace = new HashMap<>();
        TreeSet<String> rows = new TreeSet<>();
        TreeSet<String> columns = new TreeSet<>();
        for (Placed each : values) {
            if (!each.row().isBlank() && !each.column().isBlank()) {
                byPlace.computeIfAbsent(new Place(each.row(), each.column()), any -> new ArrayList<>())
                        .add(each.value());
                rows.add(each.row());
                columns.add(each.column());
            }
        }
        ToIntFunction<Place> count =
                place -> byPlace.getOrDefault(place, List.of()).size();
        boolean shrunk = true;
        while (shrunk && rows.size() >= FEWEST && columns.size() >= FEWEST) {
            shrunk = shrink(rows, columns, count);
        }
        return rows.size() < FEWEST || columns.size() < FEWEST
                ? Optional.empty()
                : Optional.of(balanced(List.copyOf(rows), List.copyOf(columns), byPlace));
    }

    /** Leaves the poorest row or column out; returns whether one had a poor cell. */
    private static boolean shrink(TreeSet<String> rows, TreeSet<String> columns, ToIntFunction<Place> count) {
        Optional<String> row = poorest(rows, each -> poor(List.of(each), columns, count));
        Optional<String> column = poorest(columns, each -> poor(rows, List.of(each), count));
        if (row.isEmpty() || column.isEmpty()) {
            return false;
        }
        double rowShare = (double) poor(List.of(row.get()), columns, count) / columns.size();
        double columnShare = (double) poor(rows, List.of(column.get()), count) / rows.size();
        if (rowShare >= columnShare) {
            rows.remove(row.get());
        } else {
            columns.remove(column.get());
        }
        return true;
    }

    private static Optional<String> poorest(TreeSet<String> names, ToIntFunction<String> poor) {
        return names.stream().filter(name -> poor.applyAsInt(name) > 0).max(Comparator.comparingInt(poor));
    }

    private static int poor(Iterable<String> rows, Iterable<String> columns, ToIntFunction<Place> count) {
        int poor = 0;
        for (String row : rows) {
            for (String column : columns) {
                if (count.applyAsInt(new Place(row, column)) < FEWEST) {
                    poor++;
                }
            }
        }
        return poor;
    }

    private static CrossedCells balanced(List<String> rows, List<String> columns, Map<Place, List<Double>> byPlace) {
        int repeats = Integer.MAX_VALUE;
        for (String row : rows) {
            for (String column : columns) {
                repeats = Math.min(repeats, byPlace.get(new Place(row, column)).size());
            }
        }
        List<List<List<Double>>> cells = new ArrayList<>();
        for (String row : rows) {
            List<List<Double>> line = new ArrayList<>();
            for (String column : columns) {
                List<Double> all = byPlace.get(new Place(row, column));
                line.add(List.copyOf(all.subList(all.size() - repeats, all.size())));
            }
            cells.add(List.copyOf(line));
        }
        return new CrossedCells(rows, columns, repeats, List.copyOf(cells));
    }

    /** Returns the values by row, column and repeat. */
    double[][][] values() {
        return cells.stream()
                .map(line -> line.stream()
                        .map(cell ->
                                cell.stream().mapToDouble(Double::doubleValue).toArray())
                        .toArray(double[][]::new))
                .toArray(double[][][]::new);
    }
}
