// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Tones;

/** The plan's items, each with its state as a picture, a word and a tone. */
final class PlanTable extends Composite {
    private static final int STATE_WIDTH = 84;
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
        column("State", STATE_WIDTH);
        column("Step", STEP_WIDTH);
        TableColumn last = column("Measurement", MEASUREMENT_WIDTH);
        addListener(SWT.Resize, event -> {
            int before = table.getColumn(0).getWidth() + table.getColumn(1).getWidth();
            last.setWidth(Math.max(MEASUREMENT_WIDTH, getClientArea().width - before - SCROLL_BAR));
        });
        table.addListener(SWT.Selection, event -> chosen.accept(selection()));
    }

    private TableColumn column(String words, int width) {
        TableColumn column = new TableColumn(table, SWT.LEFT);
        column.setText(words);
        column.setWidth(width);
        return column;
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
        shown = List.copyOf(rows);
        Optional<PlanItem> now = atHand.map(ItemRow::item);
        if (!now.equals(hand)) {
            hand = now;
            atHand.ifPresent(row -> select(rows.indexOf(row)));
        } else {
            chosen.accept(selection());
        }
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
