// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.metrology.MethodComparison;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Severity;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.budget.ReadingBudget;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.table.CopiedTable;

/** The uncertainty budget of a reading's channel: table, bars, and both methods beside each other. All is computed in the background. */
final class BudgetPane extends Composite {
    private static final Messages TEXTS = Messages.of(BudgetPane.class);
    private static final int COLUMN_GAP = 22;
    private static final int ROWS_SHOWN = 6;
    private static final int CHART_HEIGHT = 90;
    private static final int BAR_HEIGHT = 24;
    private static final int FACTS_WIDTH = 200;

    private final BackgroundWork work;
    private final ScrolledComposite scrolled;
    private final Composite page;
    private final Combo channels;
    private final Label facts;
    private final MessageLine verdict;
    private final Label notes;
    private final Slices building;
    private Table table;
    private ChartCanvas chart;
    private Optional<LogEntry> entry = Optional.empty();
    private Optional<ReadingBudget> shown = Optional.empty();
    private Optional<MethodComparison> compared = Optional.empty();
    private long wanted;

    BudgetPane(Composite parent, BackgroundWork work) {
        super(parent, SWT.NONE);
        this.work = work;
        setLayout(new FillLayout());
        scrolled = new ScrolledComposite(this, SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        page = new Composite(scrolled, SWT.NONE);
        scrolled.setContent(page);
        scrolled.addListener(SWT.Resize, event -> measure());
        Spacing.page(1)
                .margins(Spacing.GAP, Spacing.GAP)
                .spacing(Spacing.TIGHT, Spacing.TIGHT)
                .applyTo(page);
        channels = Ids.name(new Combo(page, SWT.READ_ONLY), "log.budget.channel");
        channels.setToolTipText(TEXTS.text("budget.channel.hint"));
        channels.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> compute()));
        facts = Ids.name(new Label(page, SWT.WRAP), "log.budget.facts");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(FACTS_WIDTH, SWT.DEFAULT)
                .applyTo(facts);
        verdict = new MessageLine(page, "log.budget.verdict");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(verdict);
        notes = Ids.name(new Label(page, SWT.WRAP), "log.budget.notes");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(FACTS_WIDTH, SWT.DEFAULT)
                .applyTo(notes);
        building = new Slices(this);
        building.add(this::makeTable);
        building.add(this::makeChart);
        building.add(this::compute);
    }

    private void makeTable() {
        table = Ids.name(new Table(page, SWT.MULTI | SWT.FULL_SELECTION | SWT.BORDER), "log.budget.table");
        table.setHeaderVisible(true);
        for (int index = 0; index < BudgetTexts.HEADERS.size(); index++) {
            boolean number = index > 0 && index < BudgetTexts.TEXT_COLUMNS_BEGIN;
            TableColumn column = new TableColumn(table, number ? SWT.RIGHT : SWT.LEFT);
            column.setText(BudgetTexts.headers().get(index));
        }
        table.setToolTipText(TEXTS.text("budget.table.hint"));
        table.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.stateMask == SWT.MOD1 && event.keyCode == 'c') {
                copy();
            }
        }));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(1, table.getHeaderHeight() + ROWS_SHOWN * table.getItemHeight())
                .applyTo(table);
        table.moveAbove(notes);
        measure();
    }

    private void makeChart() {
        chart = Ids.name(new ChartCanvas(page, SWT.NONE), "log.budget.bars");
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .hint(1, CHART_HEIGHT + ROWS_SHOWN * BAR_HEIGHT)
                .applyTo(chart);
        chart.showMessage(TEXTS.text("budget.none"));
        chart.moveAbove(notes);
        measure();
    }

    /** Shows the budget of an entry; of the weakest channel first. */
    void show(Optional<LogEntry> newEntry) {
        if (newEntry.equals(entry)) {
            return;
        }
        entry = newEntry;
        List<ChannelReading> offered =
                newEntry.flatMap(LogEntry::reading).map(Reading::channels).orElse(List.of());
        channels.setItems(offered.stream()
                .map(channel -> TEXTS.text("budget.channel", channel.channel()))
                .toArray(String[]::new));
        newEntry.flatMap(LogEntry::reading)
                .ifPresent(reading -> channels.select(reading.channels().indexOf(reading.weakestChannel())));
        channels.setEnabled(offered.size() > 1);
        compute();
    }

    private void compute() {
        if (!building.done()) {
            return; // a turn of its own for this comes last
        }
        wanted++;
        Optional<Reading> reading = entry.flatMap(LogEntry::reading);
        if (reading.isEmpty()) {
            shown = Optional.empty();
            facts.setText(
                    entry.isEmpty()
                            ? TEXTS.text("budget.none")
                            : TEXTS.text("budget.notPower", entry.get().id()));
            table.removeAll();
            notes.setText("");
            verdict.clear();
            chart.showMessage(TEXTS.text("budget.choose"));
            measure();
            return;
        }
        long mine = wanted;
        ChannelReading channel = reading.get().channels().get(Math.max(0, channels.getSelectionIndex()));
        work.start(
                TEXTS.text("budget.job", entry.get().id()),
                progress -> ReadingBudget.of(reading.get(), channel),
                budget -> answer(mine, () -> showBudget(budget, mine)),
                failure -> answer(mine, () -> fail(failure)));
    }

    private void answer(long number, Runnable action) {
        if (number == wanted && !isDisposed()) {
            action.run();
        }
    }

    private void fail(Exception failure) {
        verdict.show(Severity.ERROR, String.valueOf(failure.getMessage()));
    }

    private void showBudget(ReadingBudget budget, long mine) {
        shown = Optional.of(budget);
        compared = Optional.empty();
        showTexts();
        chart.setReadOutStyle(new ReadOutStyle(Numbers.decimalComma(), ReadOutStyle.USUAL.coverage()));
        chart.show(PlotSource.of(budget.bars()));
        verdict.mention(TEXTS.text("budget.drawing"));
        work.start(
                TEXTS.text("budget.drawing.job"),
                progress -> budget.monteCarlo(BudgetTexts.COVERAGE, ReadingBudget.USUAL_SEED),
                comparison -> answer(mine, () -> {
                    compared = Optional.of(comparison);
                    showTexts();
                }),
                failure -> answer(mine, () -> fail(failure)));
    }

    /** Writes everything as numbers are shown now. */
    void showTexts() {
        if (shown.isEmpty()) {
            return;
        }
        ReadingBudget budget = shown.get();
        String lines = String.join("\n", BudgetTexts.result(budget));
        facts.setText(lines
                + compared.map(each -> "\n" + BudgetTexts.monteCarlo(each)).orElse(""));
        notes.setText(String.join("\n", budget.notes()).replace("&", "&&"));
        compared.ifPresent(each -> {
            if (each.agrees()) {
                verdict.mention(BudgetTexts.verdict(each));
            } else {
                verdict.show(Severity.WARNING, BudgetTexts.verdict(each));
            }
        });
        fillTable(BudgetTexts.rows(budget));
        GridData chartData = (GridData) chart.getLayoutData();
        chartData.heightHint = CHART_HEIGHT + BAR_HEIGHT * (budget.lines().size() + 1);
        measure();
    }

    /** Gives the page the height that it needs at its width. */
    private void measure() {
        int width = scrolled.getClientArea().width;
        if (width < FACTS_WIDTH) {
            return; // not laid out yet
        }
        scrolled.setMinHeight(page.computeSize(width, SWT.DEFAULT, true).y);
        if (page.getSize().x == width) {
            page.layout(true, true);
        }
    }

    private void fillTable(List<List<String>> rows) {
        boolean first = table.getItemCount() == 0;
        table.setItemCount(rows.size());
        for (int index = 0; index < rows.size(); index++) {
            TableItem item = table.getItem(index);
            item.setText(rows.get(index).toArray(new String[0]));
        }
        // All of its rows are in sight, the sum as the last: the page scrolls, not the table within it.
        GridData data = (GridData) table.getLayoutData();
        int height = table.getHeaderHeight() + rows.size() * table.getItemHeight();
        data.heightHint = table.computeTrim(0, 0, 1, height).height;
        if (first) {
            for (TableColumn column : table.getColumns()) {
                column.pack();
                column.setWidth(column.getWidth() + COLUMN_GAP / 2);
            }
        }
    }

    private void copy() {
        if (shown.isPresent()) {
            List<List<String>> all = new ArrayList<>();
            all.add(BudgetTexts.headers());
            all.addAll(Numbers.withPoint(() -> BudgetTexts.rows(shown.get())));
            CopiedTable.toClipboard(getDisplay(), CopiedTable.text(all));
        }
    }
}
