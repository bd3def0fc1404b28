// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Refusals;

/** Puts a block of texts into rows: all of it or nothing. */
final class PastedCells<R> {
    private static final Messages TEXTS = Messages.of(PastedCells.class);

    private final TableSpec<R> spec;
    private final List<List<String>> cells;

    /** A cell that did not take its text. */
    private record Refused(int column, String text, IllegalArgumentException reason) {}

    /** Takes a block; a first row that repeats the headers is left out. */
    PastedCells(TableSpec<R> spec, List<List<String>> cells, int firstColumn) {
        this.spec = spec;
        boolean headed = !cells.isEmpty() && isHeader(cells.get(0), firstColumn);
        this.cells = headed ? cells.subList(1, cells.size()) : cells;
    }

    int rowCount() {
        return cells.size();
    }

    private boolean isHeader(List<String> row, int firstColumn) {
        for (int index = 0; index < row.size(); index++) {
            int column = firstColumn + index;
            if (column >= spec.columns().size()
                    || !row.get(index)
                            .strip()
                            .equalsIgnoreCase(spec.columns().get(column).title())) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns the rows with the block put in.
     *
     * @param rows all rows in the original order
     * @param targets the indices of the rows that take the block, from the first on; rows are appended for what goes beyond
     * @param firstColumn where the block begins
     * @throws IllegalArgumentException when a cell cannot be taken; the message names it
     */
    List<R> into(List<R> rows, List<Integer> targets, int firstColumn) {
        List<R> changed = new ArrayList<>(rows);
        for (int index = 0; index < cells.size(); index++) {
            List<String> texts = cells.get(index);
            if (firstColumn + texts.size() > spec.columns().size()) {
                throw new IllegalArgumentException(TEXTS.text(
                        "paste.wide",
                        Integer.toString(index + 1),
                        Integer.toString(texts.size()),
                        Integer.toString(spec.columns().size() - firstColumn),
                        spec.columns().get(firstColumn).title()));
            }
            if (index < targets.size()) {
                int target = targets.get(index);
                changed.set(target, filled(changed.get(target), index, firstColumn));
            } else {
                changed.add(filled(fresh(changed, index), index, firstColumn));
            }
        }
        return changed;
    }

    private R fresh(List<R> rows, int index) {
        return spec.newRow()
                .orElseThrow(() -> new IllegalArgumentException(
                        TEXTS.text("paste.noRow", Integer.toString(index + 1), spec.singular())))
                .apply(List.copyOf(rows));
    }

    /** The cells are tried over again while some are still taken, as one may only fit once another is in place. */
    private R filled(R start, int index, int firstColumn) {
        R row = start;
        List<String> texts = cells.get(index);
        List<Integer> open = new ArrayList<>();
        for (int offset = 0; offset < texts.size(); offset++) {
            open.add(firstColumn + offset);
        }
        Optional<Refused> firstRefused = Optional.empty();
        int openBefore = Integer.MAX_VALUE;
        while (!open.isEmpty() && open.size() < openBefore) {
            openBefore = open.size();
            firstRefused = Optional.empty();
            for (int column : List.copyOf(open)) {
                String text = texts.get(column - firstColumn);
                try {
                    row = put(row, column, text);
                    open.remove(Integer.valueOf(column));
                } catch (IllegalArgumentException reason) {
                    firstRefused = firstRefused.or(() -> Optional.of(new Refused(column, text, reason)));
                }
            }
        }
        if (firstRefused.isPresent()) {
            throw refusal(index, firstRefused.get());
        }
        return row;
    }

    private R put(R row, int columnIndex, String text) {
        Column<R> column = spec.columns().get(columnIndex);
        if (column.copied(row).equals(text.strip())) {
            return row;
        }
        return column.edit()
                .orElseThrow(() -> new IllegalArgumentException(
                        column.copied(row).isEmpty()
                                ? TEXTS.text("paste.fixed.empty")
                                : TEXTS.text("paste.fixed", column.copied(row))))
                .with()
                .apply(row, text);
    }

    private IllegalArgumentException refusal(int index, Refused refused) {
        String reason = Refusals.sentence(refused.reason());
        String sentence =
                Refusals.quotes(reason, refused.text()) ? reason : TEXTS.text("cell.unfit", refused.text(), reason);
        return new IllegalArgumentException(
                TEXTS.text(
                        "paste.refused",
                        Integer.toString(index + 1),
                        spec.columns().get(refused.column()).title(),
                        sentence),
                refused.reason());
    }
}
