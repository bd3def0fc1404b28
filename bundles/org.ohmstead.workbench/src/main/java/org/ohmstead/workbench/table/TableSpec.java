// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/**
 * What a table is of.
 *
 * @param id the beginning of its widgets' names, such as "ratings"
 * @param singular what a row is, within a sentence: "rating"
 * @param plural the same of several: "ratings"
 * @param columns from left to right; at least one, ids unique
 * @param newRow makes the row that Insert adds, from the rows there are; empty when rows are not added by hand
 * @param duplicate makes the copy of a row, from the row and the rows there are (so that its name can differ); empty when not offered
 * @param key what a row keeps when everything else about it changes, such as its name
 * @param editNames names the change of a cell by the id of its column: "Set rating power"; empty for names made of the headers
 * @param <R> a row
 */
public record TableSpec<R>(
        String id,
        String singular,
        String plural,
        List<Column<R>> columns,
        Optional<Function<List<R>, R>> newRow,
        Optional<BiFunction<R, List<R>, R>> duplicate,
        Function<R, Object> key,
        Optional<UnaryOperator<String>> editNames) {
    public TableSpec {
        columns = List.copyOf(columns);
        long ids = columns.stream().map(Column::id).distinct().count();
        if (columns.isEmpty() || ids != columns.size()) {
            throw new IllegalArgumentException("columns has " + columns.size() + " columns with " + ids
                    + " ids; it must have at least one and no id twice");
        }
    }

    /** Returns a table whose rows are changed in place, moved and removed but neither added nor duplicated. */
    public static <R> TableSpec<R> of(String id, String singular, String plural, List<Column<R>> columns) {
        return new TableSpec<>(
                id, singular, plural, columns, Optional.empty(), Optional.empty(), row -> row, Optional.empty());
    }

    /** Returns the table with rows that can be added. */
    public TableSpec<R> withNewRow(Function<List<R>, R> maker) {
        return new TableSpec<>(id, singular, plural, columns, Optional.of(maker), duplicate, key, editNames);
    }

    /** Returns the table with rows that can be duplicated. */
    public TableSpec<R> withDuplicate(BiFunction<R, List<R>, R> maker) {
        return new TableSpec<>(id, singular, plural, columns, newRow, Optional.of(maker), key, editNames);
    }

    /** Returns the table with rows that are known again by a key after a change. */
    public TableSpec<R> withKey(Function<R, Object> newKey) {
        return new TableSpec<>(id, singular, plural, columns, newRow, duplicate, newKey, editNames);
    }

    /** Returns the table with names of its own for the change of a cell, by the id of the column. */
    public TableSpec<R> withEditNames(UnaryOperator<String> names) {
        return new TableSpec<>(id, singular, plural, columns, newRow, duplicate, key, Optional.of(names));
    }

    /** Returns the index of a column, or -1. */
    int columnIndex(String columnId) {
        for (int index = 0; index < columns.size(); index++) {
            if (columns.get(index).id().equals(columnId)) {
                return index;
            }
        }
        return -1;
    }

    /** Returns "rating" or "3 ratings", as it stands behind a verb in the name of a change. */
    String counted(int count) {
        return count == 1 ? singular : count + " " + plural;
    }
}
