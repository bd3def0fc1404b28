// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.table.CellHover;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.CopiedTable;

/** The steps in the order in which they are run, with all that is forecast of each; copies with Ctrl+C. */
final class StepTable extends Composite {
    /** How many columns are made in one go. */
    static final int COLUMNS_AT_ONCE = 5;

    private static final int CELL_PADDING = 20;

    private final List<Column<StepTableRow>> columns = StepTableColumns.all();
    private final Table table;
    private List<StepTableRow> rows = List.of();

    StepTable(Composite parent, Consumer<String> chosen) {
        super(parent, SWT.NONE);
        setLayout(new FillLayout());
        table = Ids.name(new Table(this, SWT.VIRTUAL | SWT.SINGLE | SWT.FULL_SELECTION | SWT.BORDER), "forecast.table");
        table.setHeaderVisible(true);
        table.addListener(SWT.SetData, this::fill);
        table.addListener(SWT.Selection, event -> selection().ifPresent(row -> chosen.accept(row.id())));
        table.addListener(SWT.KeyDown, event -> {
            if (event.stateMask == SWT.MOD1 && event.keyCode == 'c') {
                copy();
            }
        });
        new CellHover(table, this::hover);
    }

    /** Makes some columns more; rows can be shown when all of them are there. */
    void addColumns() {
        int end = Math.min(columns.size(), table.getColumnCount() + COLUMNS_AT_ONCE);
        for (Column<StepTableRow> each : columns.subList(table.getColumnCount(), end)) {
            TableColumn column = new TableColumn(table, each.alignRight() ? SWT.RIGHT : SWT.LEFT);
            column.setText(each.title());
        }
        if (end == columns.size()) {
            fit();
        }
    }

    List<StepTableRow> rows() {
        return rows;
    }

    /**
     * Shows other rows; the chosen step stays chosen.
     *
     * @param fitted whether columns that are too narrow for them are to become wider
     */
    void setRows(List<StepTableRow> newRows, boolean fitted) {
        Optional<String> chosen = selection().map(StepTableRow::id);
        int top = table.getTopIndex();
        rows = List.copyOf(newRows);
        table.setItemCount(rows.size());
        table.clearAll();
        if (fitted) {
            fit();
        }
        if (top < rows.size()) {
            table.setTopIndex(top);
        }
        select(chosen);
    }

    private void fit() {
        GC gc = new GC(table);
        try {
            // Themes draw the headers bold.
            Font bold = JFaceResources.getResources()
                    .create(FontDescriptor.createFrom(table.getFont()).setStyle(SWT.BOLD));
            for (int index = 0; index < columns.size(); index++) {
                Column<StepTableRow> column = columns.get(index);
                // Measuring every cell of a long plan would take too long; the text of the most characters tells
                // enough.
                String longest = rows.stream()
                        .map(row -> column.shown().apply(row))
                        .max(Comparator.comparingInt(String::length))
                        .orElse("");
                gc.setFont(bold);
                int title = gc.stringExtent(column.title()).x;
                gc.setFont(table.getFont());
                int width = Math.max(title, gc.stringExtent(longest).x) + CELL_PADDING;
                TableColumn shown = table.getColumn(index);
                // A column that is wide enough stays as it is, so that nothing jumps while a step is dragged.
                if (shown.getWidth() < width) {
                    shown.setWidth(width);
                }
            }
        } finally {
            gc.dispose();
        }
    }

    private Optional<StepTableRow> selection() {
        int index = table.getSelectionIndex();
        return index >= 0 && index < rows.size() ? Optional.of(rows.get(index)) : Optional.empty();
    }

    /** Chooses a step without telling anyone; none when there is no such. */
    void select(Optional<String> stepId) {
        int index = -1;
        for (int row = 0; row < rows.size(); row++) {
            index = stepId.equals(Optional.of(rows.get(row).id())) ? row : index;
        }
        if (index < 0) {
            table.deselectAll();
        } else if (index != table.getSelectionIndex()) {
            table.setSelection(index);
            table.showSelection();
        }
    }

    private void fill(Event event) {
        // GTK asks for rows that are just going, too.
        if (event.index < 0 || event.index >= rows.size()) {
            return;
        }
        TableItem item = (TableItem) event.item;
        StepTableRow row = rows.get(event.index);
        Tones tones = Tones.of(this);
        for (int index = 0; index < columns.size(); index++) {
            int at = index;
            Column<StepTableRow> column = columns.get(index);
            item.setText(index, column.shown().apply(row));
            column.problem().apply(row).ifPresent(mark -> item.setForeground(at, tones.of(mark.severity())));
        }
    }

    private String hover(int row, int column) {
        if (row < 0 || row >= rows.size()) {
            return "";
        }
        return columns.get(column)
                .problem()
                .apply(rows.get(row))
                .map(mark -> mark.sentence())
                .orElseGet(() -> columns.get(column).hover().apply(rows.get(row)));
    }

    private void copy() {
        List<String> header = columns.stream().map(Column::title).toList();
        List<List<String>> cells = Numbers.withPoint(() -> rows.stream()
                .map(row -> columns.stream()
                        .map(column -> column.shown().apply(row))
                        .toList())
                .collect(Collectors.toList()));
        CopiedTable.toClipboard(
                getDisplay(),
                CopiedTable.text(
                        Stream.concat(Stream.of(header), cells.stream()).toList()));
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && table.setFocus();
    }
}
