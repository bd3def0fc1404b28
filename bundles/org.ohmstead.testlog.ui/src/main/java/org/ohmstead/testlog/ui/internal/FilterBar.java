// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.RowData;
import org.eclipse.swt.layout.RowLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.search.EntryState;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** The rows above the table in which is said which entries are wanted. */
final class FilterBar {
    private static final Messages TEXTS = Messages.of(FilterBar.class);

    /** From this many entries on, a pause in typing is waited for. */
    static final int SLOW = 2000;

    private static final int PAUSE_MILLISECONDS = 150;
    private static final int ONE_ROW_WIDTH = 860;
    private static final int COUNT_WIDTH = 96;
    private static final int TEXT_WIDTH = 160;

    private static final List<Set<EntryState>> STATES = List.of(
            Set.of(),
            EnumSet.of(EntryState.VALID),
            EnumSet.of(EntryState.VOIDED),
            EnumSet.of(EntryState.UNREADABLE),
            EnumSet.of(EntryState.NOTE, EntryState.ABOUT));

    /** The keys of what is shown for each of {@link #STATES}. */
    private static final List<String> STATE_KEYS = List.of("any", "valid", "voided", "unreadable", "about");

    private final Composite bar;
    private final Composite row;
    private final Composite tools;
    private final Text text;
    private final Combo mode;
    private final Combo load;
    private final Combo state;
    private final Label count;
    private final Button more;
    private final Button clear;
    private final MessageLine error;
    /** Made some time after the rest. */
    private Optional<FilterMore> conditions = Optional.empty();

    private final Consumer<Find> wanted;
    private final Runnable typedAndPaused = this::wish;
    private List<Double> loads = List.of();
    private Find find = Find.EVERYTHING;
    private boolean slow;

    FilterBar(Composite parent, SavedFilters saved, Consumer<Find> wanted, Runnable enterTable) {
        this.wanted = wanted;
        bar = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(bar);
        row = new Composite(bar, SWT.NONE);
        Spacing.group(2).applyTo(row);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(row);
        text = words(enterTable);
        tools = new Composite(row, SWT.NONE);
        RowLayout flow = new RowLayout(SWT.HORIZONTAL);
        flow.center = true;
        flow.spacing = Spacing.GAP;
        flow.marginLeft = 0;
        flow.marginRight = 0;
        flow.marginTop = 0;
        flow.marginBottom = 0;
        tools.setLayout(flow);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(tools);
        mode = combo(
                "log.filter.mode",
                TEXTS.text("column.MODE.hint"),
                Stream.concat(
                        Stream.of(TEXTS.text("filter.mode.any")),
                        Arrays.stream(Mode.values()).map(Words::of)));
        load = combo("log.filter.load", TEXTS.text("filter.load.hint"), Stream.of(TEXTS.text("filter.load.any")));
        state = combo(
                "log.filter.state",
                TEXTS.text("filter.state.hint"),
                STATE_KEYS.stream().map(key -> TEXTS.text("filter.state." + key)));
        count = Ids.name(new Label(tools, SWT.RIGHT), "log.filter.count");
        count.setToolTipText(TEXTS.text("filter.count.hint"));
        count.setLayoutData(new RowData(COUNT_WIDTH, SWT.DEFAULT));
        new FilterMenu(tools, bar, saved, filter -> use(filter.text()), () -> find.toText());
        more = Ids.name(new Button(tools, SWT.TOGGLE), "log.more");
        more.setText(TEXTS.text("filter.more"));
        more.setToolTipText(TEXTS.text("filter.more.hint"));
        clear = Ids.name(new Button(tools, SWT.PUSH), "log.filter.clear");
        clear.setText(TEXTS.text("filter.clear"));
        clear.setToolTipText(TEXTS.text("filter.clear.hint"));
        clear.setEnabled(false);
        clear.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> clear()));
        more.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> showMore()));
        error = new MessageLine(bar, "log.filter.error");
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(error);
        error.setVisible(false);
    }

    /** Makes the conditions that are not always in sight. */
    void makeMore() {
        FilterMore made = new FilterMore(bar, this::typed);
        made.control().moveAbove(error);
        conditions = Optional.of(made);
        showMore();
    }

    private void showMore() {
        conditions.ifPresent(each -> each.show(more.getSelection()));
    }

    private Text words(Runnable enterTable) {
        Text field = Ids.name(new Text(row, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL), "log.filter");
        field.setMessage(TEXTS.text("filter.words"));
        field.setToolTipText(TEXTS.text("filter.words.hint"));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(TEXT_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(field);
        field.addModifyListener(event -> typed());
        field.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.keyCode == SWT.ARROW_DOWN) {
                enterTable.run();
            } else if (event.keyCode == SWT.ESC) {
                field.setText("");
            }
        }));
        return field;
    }

    /** Gives the words a row of their own where the view is too narrow for one row; the rest then takes as many as it needs. */
    void arrange(int width) {
        boolean narrow = width < ONE_ROW_WIDTH;
        GridData words = (GridData) text.getLayoutData();
        GridData others = (GridData) tools.getLayoutData();
        int span = narrow ? 2 : 1;
        if (words.horizontalSpan != span) {
            words.horizontalSpan = span;
            others.horizontalSpan = span;
            others.grabExcessHorizontalSpace = narrow;
            others.widthHint = narrow ? 1 : SWT.DEFAULT;
        }
        if (narrow || conditions.filter(FilterMore::shown).isPresent()) {
            row.requestLayout();
            bar.requestLayout();
        }
    }

    Composite control() {
        return bar;
    }

    private Combo combo(String id, String hint, Stream<String> items) {
        Combo combo = Ids.name(new Combo(tools, SWT.READ_ONLY), id);
        combo.setItems(items.toArray(String[]::new));
        combo.select(0);
        combo.setToolTipText(hint);
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
        if (bar.isDisposed()) {
            return;
        }
        try {
            find = asked();
            complain("");
        } catch (FindException wrong) {
            complain(wrong.getMessage());
            return;
        }
        clear.setEnabled(!find.everything());
        wanted.accept(find);
    }

    private Find asked() throws FindException {
        Find asked = Find.parse(text.getText());
        int wantedMode = mode.getSelectionIndex();
        if (wantedMode > 0) {
            asked = asked.withMode(Optional.of(Mode.values()[wantedMode - 1]));
        }
        int wantedLoad = load.getSelectionIndex();
        if (wantedLoad > 0) {
            asked = asked.withLoadOhms(OptionalDouble.of(loads.get(wantedLoad - 1)));
        }
        Set<EntryState> states = STATES.get(Math.max(0, state.getSelectionIndex()));
        Find withStates = states.isEmpty() ? asked : asked.withStates(states);
        return conditions.isPresent() ? conditions.get().narrow(withStates) : withStates;
    }

    /** Says what of the query is not understood; what is shown stays until it is. */
    private void complain(String sentence) {
        boolean visible = !sentence.isEmpty();
        if (visible) {
            error.show(Severity.ERROR, sentence);
            clear.setEnabled(true);
        } else {
            error.clear();
        }
        if (error.getVisible() != visible) {
            error.setVisible(visible);
            ((GridData) error.getLayoutData()).exclude = !visible;
            error.requestLayout();
            bar.requestLayout();
        }
    }

    /** Uses a saved query: it stands in the field, and the lists beside it ask for nothing. */
    private void use(String query) {
        reset();
        if (text.getText().equals(query)) {
            wish();
        } else {
            text.setText(query);
        }
    }

    private void reset() {
        mode.select(0);
        load.select(0);
        state.select(0);
        conditions.ifPresent(FilterMore::clear);
    }

    /** Takes every filter away. */
    void clear() {
        use("");
    }

    /** Returns whether every entry is wanted. */
    boolean everything() {
        return find.everything();
    }

    /** Says how many rows are shown. */
    void show(LogRows rows) {
        slow = rows.total() > SLOW;
        count.setText(rows.count());
        int needed = count.computeSize(SWT.DEFAULT, SWT.DEFAULT).x;
        if (needed > ((RowData) count.getLayoutData()).width) {
            count.setLayoutData(new RowData(needed, SWT.DEFAULT));
            count.requestLayout();
        }
    }

    /** Offers what occurs in the log. */
    void offer(FilterOffer offer) {
        conditions.ifPresent(each -> each.offer(offer.amplifiers(), offer.operators()));
        if (!offer.loads().equals(loads)) {
            double chosen = load.getSelectionIndex() > 0 ? loads.get(load.getSelectionIndex() - 1) : 0;
            loads = offer.loads();
            List<String> items = new ArrayList<>();
            items.add(TEXTS.text("filter.load.any"));
            items.addAll(loadTexts());
            load.setItems(items.toArray(new String[0]));
            int index = loads.indexOf(chosen);
            load.select(index + 1);
            load.requestLayout();
            if (chosen > 0 && index < 0) {
                // What was asked for no longer occurs; the rows that are shown must not go on obeying it.
                bar.getDisplay().asyncExec(this::wish);
            }
        }
    }

    /** Writes the loads anew as numbers are shown now; the chosen one stays so. */
    void relabel() {
        int chosen = load.getSelectionIndex();
        List<String> texts = loadTexts();
        for (int index = 0; index < texts.size(); index++) {
            load.setItem(index + 1, texts.get(index));
        }
        load.select(chosen);
        load.requestLayout();
    }

    private List<String> loadTexts() {
        return loads.stream().map(ohms -> Numbers.shown(ohms) + " \u03a9").toList();
    }
}
