// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
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

/** The figures of a set-up, in groups; Ctrl+C copies the chosen lines. */
final class GainTable extends Composite {
    private static final int NAME = 0;
    private static final int VALUE = 1;
    private static final int UNIT = 2;
    private static final int COLUMNS = 3;
    private static final int PADDING = 18;
    private static final int LEAST_NAME = 150;
    private static final String WIDEST_VALUE = "-123.45";

    private final Table table;
    private int widestName = LEAST_NAME;
    private List<GainRow> rows = List.of();
    private Consumer<String> chosen = meaning -> {};

    GainTable(Composite parent, Messages messages) {
        super(parent, SWT.NONE);
        setLayout(new FillLayout());
        table = Ids.name(new Table(this, SWT.MULTI | SWT.FULL_SELECTION | SWT.BORDER), "gain.table");
        table.setHeaderVisible(true);
        String[] titles = {"figure", "value", "unit"};
        for (int column = 0; column < COLUMNS; column++) {
            TableColumn made = new TableColumn(table, column == VALUE ? SWT.RIGHT : SWT.LEFT);
            made.setText(messages.text("table." + titles[column]));
        }
        CopiedTable.onKeys(table, this::copy);
        table.addListener(SWT.Resize, event -> fit());
        table.addListener(SWT.Selection, event -> {
            int row = table.getSelectionIndex();
            if (row >= 0 && row < rows.size()) {
                chosen.accept(meaning(rows.get(row)));
            }
        });
        new CellHover(table, (row, column) -> row < rows.size() ? hover(rows.get(row)) : "");
    }

    private static String hover(GainRow row) {
        return row.meaning().isEmpty() ? row.name() : row.name() + "\n" + meaning(row);
    }

    private static String meaning(GainRow row) {
        return Numbers.inSentence(row.meaning());
    }

    /** Has somebody told what the line that is chosen means. */
    void onChoice(Consumer<String> listener) {
        chosen = listener;
    }

    /** Shows other lines; the place that is in sight stays. */
    void show(List<GainRow> newRows) {
        rows = List.copyOf(newRows);
        int top = table.getTopIndex();
        table.setRedraw(false);
        while (table.getItemCount() > rows.size()) {
            table.remove(table.getItemCount() - 1);
        }
        while (table.getItemCount() < rows.size()) {
            new TableItem(table, SWT.NONE);
        }
        Font bold = JFaceResources.getResources()
                .create(FontDescriptor.createFrom(table.getFont()).setStyle(SWT.BOLD));
        for (int row = 0; row < rows.size(); row++) {
            fill(table.getItem(row), rows.get(row), bold);
        }
        widen(bold);
        table.setTopIndex(top);
        table.setRedraw(true);
    }

    private void fill(TableItem item, GainRow row, Font bold) {
        Tones tones = Tones.of(this);
        item.setText(new String[] {row.name(), row.value(), row.unit()});
        item.setFont(NAME, row.kind() == GainRow.Kind.HEADING ? bold : null);
        item.setFont(VALUE, row.kind() == GainRow.Kind.ACTION ? bold : null);
        item.setImage(NAME, row.kind() == GainRow.Kind.CAUTION ? Icons.of(Severity.WARNING) : null);
        item.setForeground(VALUE, tone(row, tones));
        item.setForeground(UNIT, tones.mutedText());
    }

    private static Color tone(GainRow row, Tones tones) {
        return switch (row.kind()) {
            case CAUTION -> tones.warning();
            case ACTION -> tones.accent();
            case FIGURE, HEADING -> null;
        };
    }

    /** Values and units are as wide as their texts. */
    private void widen(Font bold) {
        GC gc = new GC(table);
        gc.setFont(bold);
        int name = 0;
        int value = gc.stringExtent(WIDEST_VALUE).x;
        int unit = gc.stringExtent(table.getColumn(UNIT).getText()).x;
        for (GainRow row : rows) {
            int icon = row.kind() == GainRow.Kind.CAUTION ? PADDING : 0;
            name = Math.max(name, icon + gc.stringExtent(row.name()).x);
            value = Math.max(value, gc.stringExtent(row.value()).x);
        }
        gc.dispose();
        widestName = name + PADDING;
        table.getColumn(VALUE).setWidth(value + PADDING);
        table.getColumn(UNIT).setWidth(unit + PADDING);
        fit();
    }

    /** Value and unit are always in sight; long names give way, and show whole on hover. */
    private void fit() {
        int left = table.getClientArea().width
                - table.getColumn(VALUE).getWidth()
                - table.getColumn(UNIT).getWidth();
        table.getColumn(NAME).setWidth(Math.max(LEAST_NAME, Math.min(widestName, left)));
    }

    private void copy() {
        int[] lines = table.getSelectionIndices();
        Arrays.sort(lines);
        List<List<String>> cells = Arrays.stream(lines)
                .mapToObj(rows::get)
                .map(row -> List.of(
                        row.name(),
                        Numbers.decimalComma() ? row.value().replace(',', '.') : row.value(),
                        row.unit(),
                        row.meaning()))
                .toList();
        CopiedTable.toClipboard(getDisplay(), CopiedTable.text(cells));
    }
}
