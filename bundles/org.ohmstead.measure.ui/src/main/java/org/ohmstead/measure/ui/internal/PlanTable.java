// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Tones;

/** The plan's items, each with its state as a picture, a word and a tone. */
final class PlanTable extends Composite {
    private static final Messages TEXTS = Messages.of(PlanTable.class);

    private static final int STATE_WIDTH = 84;
    private static final int BESIDE_WORD = 34;
    private static final int CELL_PADDING = 14;
    private static final int STEP_WIDTH = 158;
    private static final int MEASUREMENT_WIDTH = 110;
    private static final int SCROLL_BAR = 18;

    private final Table table;
    private final Consumer<Optional<ItemRow>> chosen;
    private List<ItemRow> shown = List.of();
    private Optional<PlanItem> hand = Optional.empty();

    PlanTable(Composite parent, Consumer<Optional<ItemRow>> chosen) {
        super(parent, SWT.NONE);
        this.chosen = chosen;
        setLayout(new FillLayout());
        table = Ids.name(new Table(this, SWT.FULL_SELECTION | SWT.SINGLE | SWT.BORDER), "console.plan");
        table.setHeaderVisible(true);
        column(TEXTS.text("plan.state"), stateWidth());
        column(TEXTS.text("plan.step"), STEP_WIDTH);
        column(TEXTS.text("plan.measurement"), MEASUREMENT_WIDTH);
        addListener(SWT.Resize, event -> fitLast());
        table.addListener(SWT.Selection, event -> chosen.accept(selection()));
    }

    /** As wide as the longest word of a state beside its picture. */
    private int stateWidth() {
        return Math.max(
                STATE_WIDTH, widest(Stream.of(ItemRow.Status.values()).map(ItemRow.Status::word)) + BESIDE_WORD);
    }

    private int widest(Stream<String> texts) {
        GC gc = new GC(table);
        try {
            gc.setFont(table.getFont());
            return texts.distinct()
                    .mapToInt(text -> gc.textExtent(text).x)
                    .max()
                    .orElse(0);
        } finally {
            gc.dispose();
        }
    }

    /** Gives the steps what they need, and the measurements what is left. */
    private void fit(List<ItemRow> rows) {
        int width = Math.max(STEP_WIDTH, widest(rows.stream().map(ItemRow::step)) + CELL_PADDING);
        if (width != table.getColumn(1).getWidth()) {
            table.getColumn(1).setWidth(width);
            fitLast();
        }
    }

    private void fitLast() {
        int before = table.getColumn(0).getWidth() + table.getColumn(1).getWidth();
        table.getColumn(2).setWidth(Math.max(MEASUREMENT_WIDTH, getClientArea().width - before - SCROLL_BAR));
    }

    private void column(String words, int width) {
        TableColumn column = new TableColumn(table, SWT.LEFT);
        column.setText(words);
        column.setWidth(width);
    }

    /** Shows rows; only what changed is touched. The item at hand comes into view when it is another than before. */
    void show(List<ItemRow> rows, Optional<ItemRow> atHand) {
        if (rows.equals(shown)) {
            return;
        }
        Tones tones = Tones.of(table);
        table.setItemCount(rows.size());
        for (int i = 0; i < rows.size(); i++) {
            if (i >= shown.size() || !rows.get(i).equals(shown.get(i))) {
                fill(table.getItem(i), rows.get(i), tones);
            }
        }
        if (!steps(rows).equals(steps(shown))) {
            fit(rows);
        }
        shown = List.copyOf(rows);
        Optional<PlanItem> now = atHand.map(ItemRow::item);
        if (!now.equals(hand)) {
            hand = now;
            atHand.ifPresent(row -> select(rows.indexOf(row)));
        } else {
            chosen.accept(selection());
        }
    }

    private static List<String> steps(List<ItemRow> rows) {
        return rows.stream().map(ItemRow::step).toList();
    }

    private static void fill(TableItem item, ItemRow row, Tones tones) {
        item.setImage(0, StateIcons.of(row.status()));
        item.setText(new String[] {row.status().word(), row.step(), row.measurement()});
        item.setForeground(0, StateIcons.tone(row.status(), tones));
        boolean over = row.status() == ItemRow.Status.DONE || row.status() == ItemRow.Status.SKIPPED;
        item.setForeground(1, over ? tones.mutedText() : tones.text());
        item.setForeground(2, tones.mutedText());
    }

    private void select(int index) {
        if (index >= 0 && index < table.getItemCount()) {
            table.setSelection(index);
            table.showSelection();
            chosen.accept(selection());
        }
    }

    /** Returns the chosen row. */
    Optional<ItemRow> selection() {
        int index = table.getSelectionIndex();
        return index < 0 || index >= shown.size() ? Optional.empty() : Optional.of(shown.get(index));
    }

    /** Returns the words that are shown, row by row. */
    List<String> words() {
        List<String> words = new ArrayList<>();
        for (TableItem item : table.getItems()) {
            words.add(item.getText(0) + " " + item.getText(1));
        }
        return words;
    }

    @Override
    public boolean setFocus() {
        // A composite that is being disposed is asked to give the focus to one of its own.
        return !table.isDisposed() && table.setFocus();
    }
}
