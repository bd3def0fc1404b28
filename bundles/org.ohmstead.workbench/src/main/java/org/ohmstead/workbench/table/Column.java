// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.Comparator;
import java.util.Optional;
import java.util.function.Function;
import org.ohmstead.workbench.look.Numbers;

/**
 * A column of a table; {@link Columns} makes the usual ones.
 *
 * @param id its name within the table, such as "load"
 * @param header what stands above it, without the unit
 * @param unit what the numbers in it count; may be empty
 * @param alignRight whether it holds numbers
 * @param widthChars its width in characters at first
 * @param shown what stands in a cell
 * @param edit how a cell is changed; empty when it is not
 * @param order sorts by it
 * @param problem what is to be said about a cell; empty when all is well
 * @param hover what shows while the mouse rests on a cell; empty text for no more than the cell itself
 * @param <R> a row
 */
public record Column<R>(
        String id,
        String header,
        String unit,
        boolean alignRight,
        int widthChars,
        Function<R, String> shown,
        Optional<CellEdit<R>> edit,
        Comparator<R> order,
        Function<R, Optional<Mark>> problem,
        Function<R, String> hover) {
    /** Returns what stands above the column: "Load (Ω)". */
    public String title() {
        return unit.isEmpty() ? header : header + " (" + unit + ")";
    }

    /** Returns the column with another width, in characters. */
    public Column<R> withWidth(int newWidthChars) {
        return new Column<>(id, header, unit, alignRight, newWidthChars, shown, edit, order, problem, hover);
    }

    /** Returns the column with another unit in its header. */
    public Column<R> withUnit(String newUnit) {
        return new Column<>(id, header, newUnit, alignRight, widthChars, shown, edit, order, problem, hover);
    }

    /** Returns the column with another text in its cells. */
    public Column<R> withShown(Function<R, String> newShown) {
        return new Column<>(id, header, unit, alignRight, widthChars, newShown, edit, order, problem, hover);
    }

    /** Returns the column with cells that are changed so. */
    public Column<R> withEdit(CellEdit<R> newEdit) {
        return new Column<>(
                id, header, unit, alignRight, widthChars, shown, Optional.of(newEdit), order, problem, hover);
    }

    /** Returns the column sorted otherwise. */
    public Column<R> withOrder(Comparator<R> newOrder) {
        return new Column<>(id, header, unit, alignRight, widthChars, shown, edit, newOrder, problem, hover);
    }

    /** Returns the column with marks on some cells. */
    public Column<R> withProblem(Function<R, Optional<Mark>> newProblem) {
        return new Column<>(id, header, unit, alignRight, widthChars, shown, edit, order, newProblem, hover);
    }

    /** Returns the column with a text that shows while the mouse rests on a cell. */
    public Column<R> withHover(Function<R, String> newHover) {
        return new Column<>(id, header, unit, alignRight, widthChars, shown, edit, order, problem, newHover);
    }

    /** Returns the text of a cell on the clipboard: a plain number without its unit, with a point. */
    String copied(R row) {
        return Numbers.withPoint(() -> edit.map(CellEdit::text).orElse(shown).apply(row));
    }
}
