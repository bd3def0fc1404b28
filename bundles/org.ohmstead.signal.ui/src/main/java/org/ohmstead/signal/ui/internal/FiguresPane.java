// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.BiFunction;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/**
 * The figures and the harmonics of a capture, side by side. What a figure means, and how sure it is, shows on hover and,
 * of the chosen row, below the tables.
 */
public final class FiguresPane extends Composite {
    private static final int[] WEIGHTS = {46, 54};
    private static final int CELL_ROOM = 14;
    private static final int LEAST_NUMBER_WIDTH = 64;
    private static final int FIRST_CHANNEL_COLUMN = 2;

    private final Table figureTable;
    private final Table harmonicTable;
    private final Label explanation;
    private final Slices filling;
    private List<Figure> figures = List.of();
    private List<String> channelNames = List.of();

    public FiguresPane(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.tight(1).applyTo(this);
        SashForm sash = new SashForm(this, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sash);
        figureTable = table(sash, "capture.figures");
        harmonicTable = table(sash, "capture.harmonics");
        sash.setWeights(WEIGHTS);
        sash.setSashWidth(Spacing.GAP);
        filling = new Slices(this);
        explanation = Ids.name(new Label(this, SWT.WRAP), "capture.explanation");
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(explanation);
        figureTable.addListener(SWT.Selection, event -> explain(figureOf((TableItem) event.item, -1)));
        harmonicTable.addListener(SWT.Selection, event -> explain(Texts.say("harmonics.what")));
        hover(figureTable, this::figureOf);
        hover(harmonicTable, (item, column) -> Texts.say("harmonics.what"));
    }

    private static Table table(Composite parent, String id) {
        Table table = Ids.name(new Table(parent, SWT.FULL_SELECTION | SWT.MULTI | SWT.BORDER), id);
        table.setHeaderVisible(true);
        table.setLinesVisible(true);
        return table;
    }

    private static void hover(Table table, BiFunction<TableItem, Integer, String> text) {
        table.addListener(SWT.MouseMove, event -> {
            TableItem item = table.getItem(new Point(event.x, event.y));
            String tip = item == null ? null : text.apply(item, columnAt(table, item, event));
            if (!Objects.equals(tip, table.getToolTipText())) {
                table.setToolTipText(tip);
            }
        });
    }

    private static int columnAt(Table table, TableItem item, Event event) {
        for (int column = 0; column < table.getColumnCount(); column++) {
            if (item.getBounds(column).contains(event.x, event.y)) {
                return column;
            }
        }
        return -1;
    }

    private String figureOf(TableItem item, int column) {
        int row = figureTable.indexOf(item);
        if (row >= figures.size()) {
            return ""; // the rows of what is shown now are still to come
        }
        Figure figure = figures.get(row);
        if (column >= FIRST_CHANNEL_COLUMN) {
            return figure.explanation(column - FIRST_CHANNEL_COLUMN);
        }
        StringBuilder all = new StringBuilder(figure.definition());
        for (int i = 0; i < figure.uncertainties().size(); i++) {
            if (!figure.uncertainties().get(i).isEmpty()) {
                all.append('\n')
                        .append(channelNames.get(i))
                        .append(": ")
                        .append(figure.uncertainties().get(i));
            }
        }
        return all.toString();
    }

    private void explain(String text) {
        explanation.setText(text);
        explanation.setForeground(Tones.of(this).mutedText());
        GridDataFactory.createFrom((GridData) explanation.getLayoutData())
                .exclude(text.isEmpty())
                .applyTo(explanation);
        explanation.setVisible(!text.isEmpty());
        layout(true, true);
    }

    /** Shows the figures of some channels. */
    public void show(List<String> names, List<Figure> newFigures, List<HarmonicRow> harmonics) {
        figures = newFigures;
        channelNames = names;
        explain("");
        List<String> figureHeads = new ArrayList<>(List.of(Texts.say("table.figure"), Texts.say("table.unit")));
        List<String> harmonicHeads = new ArrayList<>(List.of(Texts.say("table.order"), "Hz"));
        for (String name : names) {
            figureHeads.add(name);
            harmonicHeads.addAll(List.of(name + " dB", name + " %", name + " \u00b0"));
        }
        List<List<String>> figureCells = new ArrayList<>();
        for (Figure figure : figures) {
            List<String> cells = new ArrayList<>(List.of(figure.name(), figure.unit()));
            cells.addAll(figure.values());
            figureCells.add(cells);
        }
        List<List<String>> harmonicCells = new ArrayList<>();
        for (HarmonicRow row : harmonics) {
            List<String> cells = new ArrayList<>(List.of(String.valueOf(row.order()), row.frequencyHz()));
            for (int i = 0; i < names.size(); i++) {
                cells.addAll(List.of(
                        row.levels().get(i), row.percents().get(i), row.phases().get(i)));
            }
            harmonicCells.add(cells);
        }
        filling.clear();
        fill(figureTable, figureHeads, FIRST_CHANNEL_COLUMN, figureCells);
        fill(harmonicTable, harmonicHeads, 0, harmonicCells);
    }

    private void fill(Table table, List<String> heads, int firstNumber, List<List<String>> rows) {
        filling.add(() -> {
            table.setRedraw(false);
            makeColumns(table, heads, firstNumber);
            table.setRedraw(true);
        });
        filling.add(() -> {
            table.setRedraw(false);
            table.setItemCount(rows.size());
            for (int i = 0; i < rows.size(); i++) {
                table.getItem(i).setText(rows.get(i).toArray(String[]::new));
            }
            table.deselectAll();
            fitColumns(table, firstNumber);
            table.setRedraw(true);
        });
    }

    private static void makeColumns(Table table, List<String> newHeads, int firstNumber) {
        List<String> heads = Arrays.stream(table.getColumns())
                .map(TableColumn::getText)
                .limit(Math.max(0, table.getColumnCount() - 1))
                .toList();
        if (!newHeads.equals(heads)) {
            table.removeAll(); // with rows in it each new column costs far more
            for (TableColumn column : table.getColumns()) {
                column.dispose();
            }
            for (int i = 0; i < newHeads.size(); i++) {
                TableColumn column = new TableColumn(table, i >= firstNumber ? SWT.RIGHT : SWT.LEFT);
                column.setText(newHeads.get(i));
                column.setResizable(true);
            }
            // The last column takes all the room that is left, so it holds nothing.
            new TableColumn(table, SWT.LEFT).setWidth(CELL_ROOM);
        }
    }

    private static void fitColumns(Table table, int firstNumber) {
        for (int i = 0; i < table.getColumnCount() - 1; i++) {
            TableColumn column = table.getColumn(i);
            column.pack();
            int least = i >= firstNumber ? LEAST_NUMBER_WIDTH : 0;
            column.setWidth(Math.max(least, column.getWidth() + CELL_ROOM));
        }
    }

    /** Calls an action when the user asks to copy while one of the tables has the focus. */
    public void onCopy(Runnable copy) {
        for (Table table : List.of(figureTable, harmonicTable)) {
            table.addListener(SWT.KeyDown, event -> {
                if (event.keyCode == 'c' && (event.stateMask & SWT.MODIFIER_MASK) == SWT.MOD1) {
                    copy.run();
                }
            });
        }
    }
}
