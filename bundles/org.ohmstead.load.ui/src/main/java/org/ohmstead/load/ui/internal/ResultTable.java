// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.table.CellHover;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.CopiedTable;

/**
 * Rows to look through and choose one of: a line with a heading and a filter above a table that sorts by a click on a header and copies
 * with Ctrl+C.
 *
 * @param <R> a row
 */
final class ResultTable<R> extends Composite {
    private static final Messages TEXTS = Messages.of(ResultTable.class);

    private static final int CELL_PADDING = 22;
    private static final int WIDEST = 190;
    private static final int FILTER_WIDTH = 130;
    private static final int NONE = -1;

    private final List<Column<R>> columns;
    private final Label heading;
    private final Optional<Text> filter;
    private final Table table;
    private String title;
    private List<R> rows = List.of();
    private List<R> shown = List.of();
    private Consumer<Optional<R>> handler = row -> {};
    private int sortColumn = NONE;
    private int wideColumn = NONE;
    private boolean descending;

    /** Makes an empty table; {@code filtered} adds the filter. */
    ResultTable(Composite parent, String id, String title, boolean filtered, List<Column<R>> columns) {
        super(parent, SWT.NONE);
        this.columns = List.copyOf(columns);
        this.title = title;
        Spacing.tight(2).applyTo(this);
        heading = Ids.name(new Label(this, SWT.NONE), id + ".heading");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .span(filtered ? 1 : 2, 1)
                .applyTo(heading);
        filter = filtered ? Optional.of(filter(id)) : Optional.empty();
        table = Ids.name(new Table(this, SWT.VIRTUAL | SWT.SINGLE | SWT.FULL_SELECTION | SWT.BORDER), id + ".table");
        table.setHeaderVisible(true);
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .span(2, 1)
                .hint(SWT.DEFAULT, table.getHeaderHeight() + 2 * table.getItemHeight())
                .applyTo(table);
        for (int index = 0; index < columns.size(); index++) {
            column(index);
        }
        table.addListener(SWT.SetData, this::fill);
        table.addListener(SWT.Selection, event -> handler.accept(selection()));
        table.addListener(SWT.KeyDown, event -> {
            if (event.stateMask == SWT.MOD1 && event.keyCode == 'c') {
                copy();
            } else if (event.stateMask == SWT.MOD1 && event.keyCode == 'f') {
                filter.ifPresent(Text::setFocus);
            }
        });
        new CellHover(table, this::hover);
        showHeading();
    }

    private Text filter(String id) {
        Text text = Ids.name(new Text(this, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL), id + ".filter");
        text.setMessage(TEXTS.text("table.filter"));
        text.setToolTipText(TEXTS.text("table.filterHint"));
        GridDataFactory.fillDefaults().hint(FILTER_WIDTH, SWT.DEFAULT).applyTo(text);
        text.addListener(SWT.Modify, event -> arrange(selection()));
        text.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                text.setText("");
                event.doit = false;
            } else if (event.keyCode == SWT.ARROW_DOWN) {
                getTable().setFocus();
                event.doit = false;
            }
        });
        return text;
    }

    private void column(int index) {
        Column<R> definition = columns.get(index);
        TableColumn column = new TableColumn(table, definition.alignRight() ? SWT.RIGHT : SWT.LEFT);
        column.setText(definition.title());
        column.setToolTipText(TEXTS.text("table.sortHint", definition.title()));
        column.setWidth(width(index));
        column.addListener(SWT.Selection, event -> sortBy(index));
    }

    /** Gives a column what the others leave, as far as its texts need it. */
    void widen(int column) {
        wideColumn = column;
        table.addListener(SWT.Resize, event -> widen());
    }

    private void widen() {
        if (wideColumn == NONE || table.getClientArea().width == 0) {
            return;
        }
        int others = 0;
        for (int index = 0; index < columns.size(); index++) {
            // GTK gives the last column whatever is left over.
            int width = index == columns.size() - 1
                    ? width(index)
                    : table.getColumn(index).getWidth();
            others += index == wideColumn ? 0 : width;
        }
        int left = table.getClientArea().width - others;
        table.getColumn(wideColumn).setWidth(Math.max(width(wideColumn), Math.min(needed(wideColumn), left)));
    }

    /** Has someone told which row the user chooses. */
    void onSelection(Consumer<Optional<R>> newHandler) {
        handler = newHandler;
    }

    /** Puts another heading above the rows. */
    void setTitle(String newTitle) {
        title = newTitle;
        showHeading();
    }

    Table getTable() {
        return table;
    }

    /** Returns the rows in sight, in their order. */
    List<R> shown() {
        return shown;
    }

    /** Shows other rows; a row equal to the chosen one stays chosen. */
    void setRows(List<R> newRows) {
        Optional<R> chosen = selection();
        rows = List.copyOf(newRows);
        arrange(chosen);
        for (int index = 0; index < columns.size(); index++) {
            int width = width(index);
            if (table.getColumn(index).getWidth() < width) {
                table.getColumn(index).setWidth(width);
            }
        }
        widen();
    }

    /** Writes the texts anew, which follow the user's decimal sign. */
    void refresh() {
        table.clearAll();
    }

    Optional<R> selection() {
        int index = table.getSelectionIndex();
        return index >= 0 && index < shown.size() ? Optional.of(shown.get(index)) : Optional.empty();
    }

    /** Chooses a row without telling anyone; none when it is not in sight. */
    void select(Optional<R> row) {
        int index = row.map(shown::indexOf).orElse(-1);
        if (index < 0) {
            table.deselectAll();
        } else if (index != table.getSelectionIndex()) {
            table.setSelection(index);
            table.showSelection();
        }
    }

    private void sortBy(int column) {
        if (column == sortColumn && descending) {
            sortColumn = NONE;
        } else {
            descending = column == sortColumn;
            sortColumn = column;
        }
        table.setSortColumn(sortColumn < 0 ? null : table.getColumn(sortColumn));
        table.setSortDirection(sortColumn < 0 ? SWT.NONE : descending ? SWT.DOWN : SWT.UP);
        arrange(selection());
    }

    private void arrange(Optional<R> chosen) {
        List<R> wanted = new ArrayList<>(rows);
        String[] words = filter.map(Text::getText)
                .orElse("")
                .strip()
                .toLowerCase(Locale.ROOT)
                .split("\\s+");
        wanted.removeIf(row -> !matches(row, words));
        if (sortColumn >= 0) {
            Comparator<R> order = columns.get(sortColumn).order();
            wanted.sort(descending ? order.reversed() : order);
        }
        shown = List.copyOf(wanted);
        table.deselectAll();
        table.setItemCount(shown.size());
        table.clearAll();
        select(chosen);
        showHeading();
    }

    private boolean matches(R row, String[] words) {
        String text = columns.stream()
                .map(column -> column.shown().apply(row))
                .collect(Collectors.joining("\t"))
                .toLowerCase(Locale.ROOT);
        for (String word : words) {
            if (!text.contains(word)) {
                return false;
            }
        }
        return true;
    }

    private void showHeading() {
        String all = Integer.toString(rows.size());
        if (rows.isEmpty()) {
            heading.setText(title);
        } else if (shown.size() == rows.size()) {
            heading.setText(TEXTS.text("table.heading", title, all));
        } else {
            heading.setText(TEXTS.text("table.headingFiltered", title, Integer.toString(shown.size()), all));
        }
    }

    private void fill(Event event) {
        TableItem item = (TableItem) event.item;
        // GTK asks for rows that are just going, too.
        if (event.index < 0 || event.index >= shown.size()) {
            return;
        }
        R row = shown.get(event.index);
        Tones tones = Tones.of(this);
        for (int index = 0; index < columns.size(); index++) {
            Column<R> column = columns.get(index);
            item.setText(index, column.shown().apply(row));
            column.problem()
                    .apply(row)
                    .ifPresent(mark -> item.setForeground(columns.indexOf(column), tones.of(mark.severity())));
        }
    }

    private int width(int index) {
        return Math.min(WIDEST, needed(index));
    }

    private int needed(int index) {
        GC gc = new GC(table);
        try {
            gc.setFont(table.getFont());
            Column<R> column = columns.get(index);
            int widest = gc.stringExtent(column.title()).x;
            for (R row : rows) {
                widest = Math.max(widest, gc.stringExtent(column.shown().apply(row)).x);
            }
            return widest + CELL_PADDING;
        } finally {
            gc.dispose();
        }
    }

    private String hover(int row, int column) {
        if (row >= shown.size()) {
            return "";
        }
        String mark = columns.get(column)
                .problem()
                .apply(shown.get(row))
                .map(each -> each.sentence())
                .orElse("");
        return mark.isEmpty() ? columns.get(column).hover().apply(shown.get(row)) : mark;
    }

    private void copy() {
        selection()
                .ifPresent(row -> CopiedTable.toClipboard(
                        getDisplay(),
                        CopiedTable.text(List.of(columns.stream()
                                .map(column ->
                                        Numbers.withPoint(() -> column.shown().apply(row)))
                                .toList()))));
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && table.setFocus();
    }
}
