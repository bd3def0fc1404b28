// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
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

/** A table that is only looked at: figures on the right, more on hover, Ctrl+C copies the chosen lines or, when none is, all of them. */
final class TextTable {
    private static final Messages TEXTS = Messages.of(TextTable.class);
    private static final int PADDING_CHARS = 2;
    /** Titles are bold, which is wider than the font that characters are counted in. */
    private static final double BOLD = 1.15;

    private final Table table;
    private final List<Head> heads;
    private Supplier<List<Line>> maker = List::of;
    private List<Line> lines = List.of();

    /**
     * The head of a column.
     *
     * @param title with the unit
     * @param numeric whether figures stand below it, on the right
     * @param widthChars its width in characters at first
     * @param hint what the column says
     */
    record Head(String title, boolean numeric, int widthChars, String hint) {
        /** Returns the head whose title has a key; its hint's key is the same with ".hint". */
        static Head of(String key, boolean numeric, int widthChars) {
            return new Head(TEXTS.text(key), numeric, widthChars, TEXTS.text(key + ".hint"));
        }
    }

    /** How much a cell wants to be seen. */
    enum Look {
        PLAIN,
        MUTED,
        OK,
        WARNING,
        ERROR
    }

    /**
     * What stands in one place.
     *
     * @param text shown and copied
     * @param hover what more there is to say; may be empty
     * @param look how much it wants to be seen
     * @param marked whether an icon of its look stands before it
     */
    record Cell(String text, String hover, Look look, boolean marked) {
        static Cell of(String text) {
            return new Cell(text, "", Look.PLAIN, false);
        }

        static Cell of(String text, String hover) {
            return new Cell(text, hover, Look.PLAIN, false);
        }
    }

    /**
     * A line of the table.
     *
     * @param key by which it is known again
     * @param cells as many as there are heads
     */
    record Line(String key, List<Cell> cells) {
        Line {
            cells = List.copyOf(cells);
        }
    }

    TextTable(Composite parent, String id, List<Head> heads) {
        this.heads = new ArrayList<>(heads);
        table = Ids.name(new Table(parent, SWT.MULTI | SWT.FULL_SELECTION | SWT.BORDER | SWT.VIRTUAL), id);
        table.setHeaderVisible(true);
        PixelConverter converter = new PixelConverter(table);
        for (Head head : heads) {
            TableColumn column = new TableColumn(table, head.numeric() ? SWT.RIGHT : SWT.LEFT);
            column.setText(head.title());
            column.setToolTipText(head.hint());
            int chars = Math.max(head.widthChars(), (int)
                            Math.ceil(BOLD * head.title().length()))
                    + PADDING_CHARS;
            column.setWidth(converter.convertWidthInCharsToPixels(chars));
        }
        table.addListener(SWT.SetData, event -> fill((TableItem) event.item, event.index));
        CopiedTable.onKeys(table, this::copy);
        new CellHover(table, this::hover);
        Menu menu = new Menu(table);
        MenuItem copied = new MenuItem(menu, SWT.PUSH);
        copied.setText(TEXTS.text("table.copy") + "\tCtrl+C");
        copied.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> copy()));
        table.setMenu(menu);
    }

    Table control() {
        return table;
    }

    /** Writes something else above a column. */
    void title(int column, String text) {
        Head head = heads.get(column);
        heads.set(column, new Head(text, head.numeric(), head.widthChars(), head.hint()));
        table.getColumn(column).setText(text);
    }

    /**
     * Shows other lines; those that are known again stay chosen.
     *
     * @param newMaker makes the same lines each time; asked again for the numbers as they are copied
     */
    void show(Supplier<List<Line>> newMaker) {
        Optional<String> chosen = chosenKey();
        maker = newMaker;
        lines = List.copyOf(newMaker.get());
        table.setItemCount(lines.size());
        table.clearAll();
        table.deselectAll();
        chosen.ifPresent(this::choose);
    }

    /** Returns what is shown. */
    List<Line> lines() {
        return lines;
    }

    /** Returns the key of the first chosen line, or empty. */
    Optional<String> chosenKey() {
        int index = table.getSelectionIndex();
        return index >= 0 && index < lines.size() ? Optional.of(lines.get(index).key()) : Optional.empty();
    }

    /** Chooses the line of a key and brings it in sight, without telling listeners; nothing when there is none. */
    void choose(String key) {
        for (int index = 0; index < lines.size(); index++) {
            if (lines.get(index).key().equals(key)) {
                table.setSelection(index);
                return;
            }
        }
    }

    private void fill(TableItem item, int row) {
        if (row >= lines.size()) {
            return;
        }
        Tones tones = Tones.of(table);
        List<Cell> cells = lines.get(row).cells();
        for (int column = 0; column < cells.size(); column++) {
            Cell cell = cells.get(column);
            item.setText(column, cell.text());
            item.setForeground(column, tone(cell.look(), tones));
            item.setImage(column, cell.marked() ? icon(cell.look()) : null);
        }
    }

    private static Color tone(Look look, Tones tones) {
        return switch (look) {
            case PLAIN -> null;
            case MUTED -> tones.mutedText();
            case OK -> tones.ok();
            case WARNING -> tones.warning();
            case ERROR -> tones.error();
        };
    }

    private static Image icon(Look look) {
        return switch (look) {
            case PLAIN, MUTED -> Icons.of(Severity.NOTE);
            case OK -> Icons.image("ok");
            case WARNING -> Icons.of(Severity.WARNING);
            case ERROR -> Icons.of(Severity.ERROR);
        };
    }

    /** Returns the chosen lines, or all when none is chosen, as text for a spreadsheet. */
    String copiedText() {
        List<Line> plain = Numbers.withPoint(maker);
        int[] chosen = table.getSelectionIndices();
        List<List<String>> rows = new ArrayList<>();
        rows.add(heads.stream().map(Head::title).toList());
        for (int index = 0; index < plain.size(); index++) {
            int row = index;
            if (chosen.length == 0 || Arrays.stream(chosen).anyMatch(each -> each == row)) {
                rows.add(plain.get(index).cells().stream().map(Cell::text).toList());
            }
        }
        return rows.size() == 1 ? "" : CopiedTable.text(rows);
    }

    /** Puts the chosen lines, or all when none is chosen, on the clipboard. */
    void copy() {
        CopiedTable.toClipboard(table.getDisplay(), copiedText());
    }

    /** Returns what to show when the pointer rests on a cell; empty for nothing. */
    String hover(int row, int column) {
        return row < lines.size() && column < lines.get(row).cells().size()
                ? lines.get(row).cells().get(column).hover()
                : "";
    }
}
