// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.table.CellHover;
import org.ohmstead.workbench.table.CopiedTable;

/** The table in which two readings stand beside each other. */
final class PairTable {
    private static final Messages TEXTS = Messages.of(PairTable.class);
    /** How the columns after the first share the rest. */
    private static final int[] SHARES = {35, 35, 30};

    private static final int MOST_FOR_LABELS = 40;
    private static final int LABEL_PADDING = 14;
    private static final int ROWS_AT_ONCE = 12;
    private static final int DIFFERENCE = 3;

    private final Table table;
    private final Font bold;
    private final Slices filling;
    private List<PairRow> rows = List.of();
    private int labelWidth;

    PairTable(Composite parent) {
        table = Ids.name(new Table(parent, SWT.MULTI | SWT.FULL_SELECTION | SWT.BORDER), "pair.table");
        table.setHeaderVisible(true);
        bold = FontDescriptor.createFrom(table.getFont()).setStyle(SWT.BOLD).createFont(table.getDisplay());
        table.addDisposeListener(event -> bold.dispose());
        for (String header : List.of(
                "",
                TEXTS.text("pair.column.first"),
                TEXTS.text("pair.column.second"),
                TEXTS.text("pair.column.difference"))) {
            TableColumn column = new TableColumn(table, SWT.LEFT);
            column.setText(header);
        }
        table.getColumn(DIFFERENCE).setToolTipText(TEXTS.text("pair.column.difference.hint"));
        filling = new Slices(table);
        table.addListener(SWT.Resize, event -> share());
        CopiedTable.onKeys(table, this::copy);
        new CellHover(table, this::hover);
    }

    Table control() {
        return table;
    }

    private void share() {
        int width = table.getClientArea().width;
        int labels = Math.min(labelWidth, width * MOST_FOR_LABELS / 100);
        table.getColumn(0).setWidth(labels);
        for (int column = 0; column < SHARES.length; column++) {
            table.getColumn(column + 1).setWidth((width - labels) * SHARES[column] / 100);
        }
    }

    /** The labels and the headings among them are to be read whole. */
    private void measureLabels() {
        GC gc = new GC(table);
        try {
            gc.setFont(bold);
            labelWidth = LABEL_PADDING
                    + rows.stream()
                            .mapToInt(row -> gc.stringExtent(row.label()).x)
                            .max()
                            .orElse(0);
        } finally {
            gc.dispose();
        }
        share();
    }

    /** Shows lines, some in each of the next turns of the event loop. */
    void show(String first, String second, List<PairRow> wanted) {
        rows = wanted;
        filling.clear();
        measureLabels();
        table.getColumn(1).setText(first);
        table.getColumn(2).setText(second);
        int top = table.getTopIndex();
        while (table.getItemCount() > wanted.size()) {
            table.remove(table.getItemCount() - 1);
        }
        for (int from = 0; from < wanted.size(); from += ROWS_AT_ONCE) {
            int start = from;
            filling.add(() -> fill(start, Math.min(start + ROWS_AT_ONCE, rows.size())));
        }
        filling.add(() -> table.setTopIndex(top));
    }

    private void fill(int from, int to) {
        Tones tones = Tones.of(table);
        for (int index = from; index < to; index++) {
            PairRow row = rows.get(index);
            TableItem item = index < table.getItemCount() ? table.getItem(index) : new TableItem(table, SWT.NONE);
            item.setText(row.cells().toArray(new String[0]));
            item.setFont(0, row.heading() ? bold : null);
            item.setForeground(0, row.heading() ? tones.accent() : null);
            item.setForeground(DIFFERENCE, row.marked() ? tones.warning() : tones.mutedText());
        }
    }

    private void copy() {
        List<List<String>> lines = new ArrayList<>();
        lines.add(List.of(
                "",
                table.getColumn(1).getText(),
                table.getColumn(2).getText(),
                table.getColumn(DIFFERENCE).getText()));
        for (int index : table.getSelectionIndices()) {
            lines.add(rows.get(index).cells());
        }
        if (lines.size() > 1) {
            CopiedTable.toClipboard(table.getDisplay(), CopiedTable.text(lines));
        }
    }

    private String hover(int index, int column) {
        if (index >= rows.size()) {
            return "";
        }
        PairRow row = rows.get(index);
        return row.hover().isEmpty() ? row.cells().get(column) : row.hover();
    }
}
