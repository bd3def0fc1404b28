// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.swt.graphics.Image;
import org.ohmstead.workbench.look.Icons;

/** What a column shows of a line, in the cell and while the mouse rests on it. */
final class CellLabels<R> {
    private static final String TICK = "\u2713";

    private final TableSpec<R> spec;
    private final int index;
    private final Column<R> column;

    CellLabels(TableSpec<R> spec, int index) {
        this.spec = spec;
        this.index = index;
        column = spec.columns().get(index);
    }

    String text(Line<R> line) {
        String text = column.shown().apply(line.row());
        boolean check =
                column.edit().filter(edit -> edit.kind() == CellEdit.Kind.CHECK).isPresent();
        return check && text.equals(CellEdit.yes()) ? TICK + " " + text : text.replace('\n', ' ');
    }

    /** Returns the icon of the gravest mark, or null for none as widgets want it. */
    Image image(Line<R> line) {
        return worst(line).map(mark -> Icons.of(mark.severity())).orElse(null);
    }

    /** Returns what shows while the mouse rests on the cell, or null for nothing as widgets want it. */
    String hover(Line<R> line) {
        List<String> parts = Stream.concat(
                        marks(line).map(Mark::sentence),
                        Stream.of(column.hover().apply(line.row())))
                .filter(part -> !part.isEmpty())
                .toList();
        if (parts.isEmpty()) {
            String text = column.shown().apply(line.row());
            return text.length() > column.widthChars() ? text : null;
        }
        return String.join("\n", parts);
    }

    /** Returns the gravest of the marks on a cell. */
    Optional<Mark> worst(Line<R> line) {
        return marks(line).min(Comparator.comparing(Mark::severity));
    }

    private Stream<Mark> marks(Line<R> line) {
        return Stream.concat(
                column.problem().apply(line.row()).stream(),
                line.marks().stream()
                        .filter(mark -> Math.max(0, spec.columnIndex(mark.columnId())) == index)
                        .map(CellMark::mark));
    }
}
