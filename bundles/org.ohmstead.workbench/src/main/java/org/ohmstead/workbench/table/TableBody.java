// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.function.IntConsumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The table itself with its columns, and over it, while it shows no row, what to do next. */
final class TableBody<R> {
    private static final Messages TEXTS = Messages.of(TableBody.class);
    private static final int LEAST_ROWS = 6;
    private static final int HEADER_EXTRA = 30;
    private static final int CELL_EXTRA = 20;

    private final TableSpec<R> spec;
    private final Table table;
    private final Composite cover;
    private final Label words;
    private int lastWidth;
    private int leastLastWidth;

    TableBody(Composite parent, TableSpec<R> spec) {
        this.spec = spec;
        Composite frame = new Composite(parent, SWT.NONE);
        cover = new Composite(frame, SWT.NONE);
        cover.setLayout(new FillLayout());
        words = Ids.name(new Label(cover, SWT.WRAP | SWT.CENTER), spec.id() + ".empty");
        words.setForeground(Tones.of(parent).mutedText());
        int style = SWT.VIRTUAL | SWT.MULTI | SWT.FULL_SELECTION | SWT.BORDER | SWT.V_SCROLL | SWT.H_SCROLL;
        table = Ids.name(new Table(frame, style), spec.id() + ".table");
        table.setHeaderVisible(true);
        table.setLinesVisible(true);
        int leastHeight = table.getHeaderHeight() + LEAST_ROWS * table.getItemHeight();
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .hint(SWT.DEFAULT, leastHeight)
                .applyTo(frame);
        frame.addListener(SWT.Resize, event -> arrange(frame.getClientArea()));
        words.addListener(SWT.MouseDown, event -> table.setFocus());
    }

    Table table() {
        return table;
    }

    void columns(IntConsumer sort) {
        GC gc = new GC(table);
        double average = gc.getFontMetrics().getAverageCharacterWidth();
        for (int index = 0; index < spec.columns().size(); index++) {
            Column<R> definition = spec.columns().get(index);
            TableColumn column = new TableColumn(table, definition.alignRight() ? SWT.RIGHT : SWT.LEFT);
            column.setText(definition.title());
            column.setToolTipText(TEXTS.text("sort.hint", definition.title()));
            column.setMoveable(false);
            int headerWidth = gc.textExtent(definition.title()).x + HEADER_EXTRA;
            column.setWidth(Math.max(headerWidth, (int) Math.ceil(definition.widthChars() * average) + CELL_EXTRA));
            int at = index;
            column.addListener(SWT.Selection, event -> sort.accept(at));
            lastWidth = column.getWidth();
        }
        leastLastWidth = lastWidth;
        gc.dispose();
    }

    /** Shows an arrow on the column that the rows are sorted by; none for -1. */
    void sorted(int column, boolean descending) {
        table.setSortColumn(column < 0 ? null : table.getColumn(column));
        table.setSortDirection(column < 0 ? SWT.NONE : descending ? SWT.DOWN : SWT.UP);
    }

    /** Shows a sentence over the table, or none. */
    void empty(String sentence) {
        words.setText(sentence);
        cover.setBackground(table.getBackground());
        words.setBackground(table.getBackground());
        cover.setVisible(!sentence.isEmpty());
        arrange(cover.getParent().getClientArea());
    }

    /** The last column, where it holds words, takes what the others leave, as long as the user has given it no other width. */
    private void stretchLast() {
        int last = table.getColumnCount() - 1;
        if (last < 0
                || spec.columns().get(last).alignRight()
                || table.getColumn(last).getWidth() != lastWidth) {
            return;
        }
        int others = 0;
        for (int index = 0; index < last; index++) {
            others += table.getColumn(index).getWidth();
        }
        int wanted = Math.max(leastLastWidth, table.getClientArea().width - others);
        if (wanted != lastWidth) {
            table.getColumn(last).setWidth(wanted);
            lastWidth = table.getColumn(last).getWidth();
        }
    }

    private void arrange(Rectangle area) {
        if (area.isEmpty()) {
            return;
        }
        table.setBounds(area);
        stretchLast();
        int width = Math.max(0, area.width - 4 * Spacing.MARGIN);
        Point size = cover.computeSize(width, SWT.DEFAULT);
        int top = table.getHeaderHeight() + 2 * Spacing.MARGIN;
        cover.setBounds((area.width - width) / 2, top, width, Math.min(size.y, Math.max(0, area.height - top)));
    }
}
