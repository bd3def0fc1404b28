// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Arrays;
import java.util.List;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.table.CellHover;
import org.ohmstead.workbench.table.CopiedTable;

/** The figures of a step, in groups; Ctrl+C copies the chosen lines. */
final class FigureTable extends Composite {
    private static final Messages TEXTS = Messages.of(FigureTable.class);
    private static final int COLUMNS = 5;
    private static final int NAME = 0;
    private static final int VALUE = 1;
    private static final int REMARK = 4;
    private static final int PADDING = 18;
    private static final int LEAST_REMARK = 160;

    private final Table table;
    private List<FigureRow> rows = List.of();

    FigureTable(Composite parent, String id) {
        this(parent, id, TEXTS.text("table.range"), TEXTS.text("table.remark"));
    }

    /** Makes an empty table; {@code range} and {@code remark} stand above those columns. */
    FigureTable(Composite parent, String id, String range, String remark) {
        super(parent, SWT.NONE);
        setLayout(new FillLayout());
        table = Ids.name(new Table(this, SWT.MULTI | SWT.FULL_SELECTION | SWT.BORDER), id);
        table.setHeaderVisible(true);
        GC gc = new GC(table);
        gc.setFont(bold()); // as headers, headings and values are
        String[] titles = {
            TEXTS.text("table.figure"), TEXTS.text("table.value"), TEXTS.text("table.unit"), range, remark
        };
        String[] widest = {
            TEXTS.text("table.widestName"), TEXTS.text("limits.unlimited"), "min", TEXTS.text("table.widestRange")
        };
        for (int column = 0; column < COLUMNS; column++) {
            TableColumn made = new TableColumn(table, column == VALUE ? SWT.RIGHT : SWT.LEFT);
            made.setText(titles[column]);
            made.setWidth(
                    column < widest.length
                            ? Math.max(gc.stringExtent(titles[column]).x, gc.stringExtent(widest[column]).x) + PADDING
                            : LEAST_REMARK);
        }
        gc.dispose();
        CopiedTable.onKeys(table, this::copy);
        new CellHover(
                table,
                (row, column) ->
                        row < rows.size() ? Numbers.inSentence(rows.get(row).remark()) : "");
    }

    /** Shows other lines; the place that is in sight stays. */
    void show(List<FigureRow> newRows) {
        rows = List.copyOf(newRows);
        int top = table.getTopIndex();
        table.setRedraw(false);
        while (table.getItemCount() > rows.size()) {
            table.remove(table.getItemCount() - 1);
        }
        while (table.getItemCount() < rows.size()) {
            new TableItem(table, SWT.NONE);
        }
        Font bold = bold();
        for (int row = 0; row < rows.size(); row++) {
            fill(table.getItem(row), rows.get(row), bold);
        }
        widen();
        table.setTopIndex(top);
        table.setRedraw(true);
    }

    private Font bold() {
        return JFaceResources.getResources()
                .create(FontDescriptor.createFrom(table.getFont()).setStyle(SWT.BOLD));
    }

    private void fill(TableItem item, FigureRow row, Font bold) {
        Tones tones = Tones.of(this);
        item.setText(new String[] {row.name(), row.value(), row.unit(), row.range(), Numbers.inSentence(row.remark())});
        item.setFont(NAME, row.kind() == FigureRow.Kind.HEADING ? bold : null);
        item.setFont(VALUE, row.kind() == FigureRow.Kind.FIGURE ? bold : null);
        item.setImage(REMARK, row.kind() == FigureRow.Kind.CAUTION ? Icons.of(Severity.WARNING) : null);
        for (int column = 0; column < COLUMNS; column++) {
            item.setForeground(column, tone(row, column, tones));
        }
    }

    private static Color tone(FigureRow row, int column, Tones tones) {
        return switch (row.kind()) {
            case CAUTION -> column == NAME ? null : tones.warning();
            case UNKNOWN -> tones.mutedText();
            case FIGURE -> column == REMARK ? tones.mutedText() : null;
            case HEADING -> null;
        };
    }

    /** The last column is as wide as its texts, so that all can be read by scrolling. */
    private void widen() {
        GC gc = new GC(table);
        int width = LEAST_REMARK;
        for (FigureRow row : rows) {
            width = Math.max(width, gc.stringExtent(row.remark()).x + 2 * PADDING);
        }
        gc.dispose();
        table.getColumn(REMARK).setWidth(width);
    }

    private void copy() {
        int[] chosen = table.getSelectionIndices();
        Arrays.sort(chosen);
        List<List<String>> cells = Arrays.stream(chosen)
                .mapToObj(rows::get)
                .map(row -> List.of(row.name(), pointed(row.value()), row.unit(), pointed(row.range()), row.remark()))
                .toList();
        CopiedTable.toClipboard(getDisplay(), CopiedTable.text(cells));
    }

    private static String pointed(String number) {
        return Numbers.decimalComma() ? number.replace(',', '.') : number;
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && table.setFocus();
    }
}
