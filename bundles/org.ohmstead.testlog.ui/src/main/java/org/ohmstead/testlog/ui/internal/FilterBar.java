// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Mode;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** The row above the table in which is said which entries are wanted. */
final class FilterBar {
    private static final int PAUSE_MILLISECONDS = 150;
    private static final int COLUMNS = 6;
    private static final int ONE_ROW_WIDTH = 720;
    private static final int COUNT_WIDTH = 96;
    private static final int TEXT_WIDTH = 160;

    private static final List<List<RowState>> STATES = List.of(
            List.of(),
            List.of(RowState.VALID),
            List.of(RowState.VOIDED),
            List.of(RowState.UNREADABLE),
            List.of(RowState.NOTE, RowState.VOIDING));
    private static final String[] STATE_WORDS = {
        "Any state", "Valid readings", "Voided", "Unreadable", "Notes and voids"
    };

    private final Composite bar;
    private final Text text;
    private final Combo mode;
    private final Combo load;
    private final Combo state;
    private final Label count;
    private final Button clear;
    private final RowFeed feed;
    private final Runnable typedAndPaused = this::wish;
    private List<Mode> modes = List.of();
    private List<Double> loads = List.of();
    private boolean slow;

    FilterBar(Composite parent, RowFeed feed, Runnable enterTable) {
        this.feed = feed;
        bar = new Composite(parent, SWT.NONE);
        Spacing.group(COLUMNS).applyTo(bar);
        text = Ids.name(new Text(bar, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL), "log.filter");
        text.setMessage("Find words in any column");
        text.setToolTipText(
                "Shows only entries in which all these words occur. Down arrow goes to the table, Escape clears.");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(TEXT_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(text);
        text.addModifyListener(event -> typed());
        text.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.keyCode == SWT.ARROW_DOWN) {
                enterTable.run();
            } else if (event.keyCode == SWT.ESC) {
                text.setText("");
            }
        }));
        mode = combo("log.filter.mode", "How the channels met the load.", "Any mode");
        load = combo("log.filter.load", "The value that the load stands for.", "Any load");
        state = combo("log.filter.state", "Whether the entry counts.", STATE_WORDS);
        count = Ids.name(new Label(bar, SWT.RIGHT), "log.filter.count");
        count.setToolTipText("How many entries are shown, of all in the log.");
        GridDataFactory.fillDefaults()
                .hint(COUNT_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(count);
        clear = Ids.name(new Button(bar, SWT.PUSH), "log.filter.clear");
        clear.setText("S&how all");
        clear.setToolTipText("Takes every filter away.");
        clear.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> clear()));
    }

    /** Gives the words a row of their own where the view is too narrow for one row. */
    void arrange(int width) {
        int span = width < ONE_ROW_WIDTH ? COLUMNS : 1;
        GridData data = (GridData) text.getLayoutData();
        if (data.horizontalSpan != span) {
            data.horizontalSpan = span;
            bar.requestLayout();
        }
    }

    Composite control() {
        return bar;
    }

    private Combo combo(String id, String hint, String... items) {
        Combo combo = Ids.name(new Combo(bar, SWT.READ_ONLY), id);
        combo.setItems(items);
        combo.select(0);
        combo.setToolTipText(hint);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(combo);
        combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> wish()));
        return combo;
    }

    private void typed() {
        if (slow) {
            bar.getDisplay().timerExec(PAUSE_MILLISECONDS, typedAndPaused);
        } else {
            wish();
        }
    }

    private void wish() {
        if (!bar.isDisposed()) {
            feed.filter(filter());
        }
    }

    private LogFilter filter() {
        int wantedMode = mode.getSelectionIndex();
        int wantedLoad = load.getSelectionIndex();
        return new LogFilter(
                text.getText(),
                wantedMode > 0 ? Optional.of(modes.get(wantedMode - 1)) : Optional.empty(),
                wantedLoad > 0 ? Optional.of(loads.get(wantedLoad - 1)) : Optional.empty(),
                STATES.get(Math.max(0, state.getSelectionIndex())));
    }

    /** Takes every filter away. */
    void clear() {
        mode.select(0);
        load.select(0);
        state.select(0);
        if (text.getText().isEmpty()) {
            wish();
        } else {
            text.setText("");
        }
    }

    void focus() {
        text.setFocus();
    }

    /** Offers the modes and loads that occur, and says how many rows are shown. */
    void show(LogArrangement arrangement) {
        slow = arrangement.all().size() > RowFeed.AT_ONCE;
        List<Mode> nowModes = arrangement.all().stream()
                .flatMap(row -> row.mode().stream())
                .distinct()
                .sorted()
                .toList();
        if (!nowModes.equals(modes)) {
            modes = nowModes;
            offer(mode, "Any mode", modes.stream().map(Words::of).toList());
        }
        List<Double> nowLoads = arrangement.all().stream()
                .map(LogRow::loadOhms)
                .filter(ohms -> ohms > 0)
                .distinct()
                .sorted((one, other) -> Double.compare(other, one))
                .toList();
        if (!nowLoads.equals(loads)) {
            loads = nowLoads;
            offer(load, "Any load", loadTexts());
        }
        count.setText(arrangement.count());
        clear.setEnabled(!feed.filter().wantsEverything());
    }

    /** Writes the loads anew as numbers are shown now; the chosen one stays so. */
    void relabel() {
        int chosen = load.getSelectionIndex();
        List<String> texts = loadTexts();
        for (int index = 0; index < texts.size(); index++) {
            load.setItem(index + 1, texts.get(index));
        }
        load.select(chosen);
        bar.layout();
    }

    private List<String> loadTexts() {
        return loads.stream().map(ohms -> Numbers.shown(ohms) + " \u03a9").toList();
    }

    private void offer(Combo combo, String any, List<String> items) {
        String chosen = combo.getText();
        List<String> all = new ArrayList<>();
        all.add(any);
        all.addAll(items);
        combo.setItems(all.toArray(new String[0]));
        int index = all.indexOf(chosen);
        combo.select(Math.max(0, index));
        bar.layout();
        if (index < 0) {
            // What was asked for no longer occurs; the rows that are shown must not go on obeying it.
            bar.getDisplay().asyncExec(this::wish);
        }
    }
}
