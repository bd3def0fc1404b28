// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.RowLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.testlog.search.FigureRange;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** The conditions that are not always in sight: amplifier, operator, days, a figure's range, overdue instruments. */
final class FilterMore {
    private static final Messages TEXTS = Messages.of(FilterMore.class);
    private static final int DAY_WIDTH = 90;
    private static final int FIGURE_WIDTH = 60;
    private static final int NAME_WIDTH = 130;
    private static final List<String> FIGURES = List.of(FigureRange.POWER, FigureRange.THD, FigureRange.SUPPLY);

    private static final double PERCENT = 100;

    private final Composite panel;
    private final Combo amplifier;
    private final Combo operator;
    private final Text from;
    private final Text to;
    private final Combo figure;
    private final Text least;
    private final Text most;
    private final Button overdue;
    private final Runnable changed;
    private boolean quiet;

    FilterMore(Composite parent, Runnable changed) {
        this.changed = changed;
        panel = Ids.name(new Composite(parent, SWT.NONE), "log.more.panel");
        RowLayout flow = new RowLayout(SWT.HORIZONTAL);
        flow.center = true;
        flow.spacing = Spacing.MARGIN;
        flow.marginLeft = 0;
        flow.marginRight = 0;
        flow.marginTop = 0;
        flow.marginBottom = 0;
        panel.setLayout(flow);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .exclude(true)
                .applyTo(panel);
        panel.setVisible(false);
        amplifier = combo(pair(TEXTS.text("more.amplifier")), "log.more.amplifier", NAME_WIDTH, TEXTS.text("more.any"));
        operator = combo(pair(TEXTS.text("more.operator")), "log.more.operator", NAME_WIDTH, TEXTS.text("more.any"));
        Composite days = pair(TEXTS.text("more.days"));
        from = field(days, "log.more.from", DAY_WIDTH, "2026-01-01", TEXTS.text("more.from.hint"));
        label(days, TEXTS.text("more.days.to"));
        to = field(days, "log.more.to", DAY_WIDTH, "2026-12-31", TEXTS.text("more.to.hint"));
        Composite range = pair("");
        figure = combo(
                range,
                "log.more.figure",
                SWT.DEFAULT,
                FIGURES.stream().map(FilterMore::words).toArray(String[]::new));
        label(range, TEXTS.text("more.range.from"));
        least = field(range, "log.more.least", FIGURE_WIDTH, "", TEXTS.text("more.least.hint"));
        label(range, TEXTS.text("more.range.to"));
        most = field(range, "log.more.most", FIGURE_WIDTH, "", TEXTS.text("more.most.hint"));
        overdue = Ids.name(new Button(panel, SWT.CHECK), "log.more.overdue");
        overdue.setText(TEXTS.text("more.overdue"));
        overdue.setToolTipText(TEXTS.text("more.overdue.hint"));
        overdue.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> tell()));
    }

    private static String words(String figure) {
        return TEXTS.text("more.figure." + figure);
    }

    private Composite pair(String words) {
        Composite pair = new Composite(panel, SWT.NONE);
        Spacing.tight(6).applyTo(pair);
        if (!words.isEmpty()) {
            label(pair, words);
        }
        return pair;
    }

    private static void label(Composite parent, String words) {
        Label label = new Label(parent, SWT.NONE);
        label.setText(words);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(label);
    }

    private Combo combo(Composite parent, String id, int width, String... items) {
        Combo combo = Ids.name(new Combo(parent, SWT.READ_ONLY), id);
        combo.setItems(items);
        combo.select(0);
        GridDataFactory.fillDefaults().hint(width, SWT.DEFAULT).applyTo(combo);
        combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> tell()));
        return combo;
    }

    private Text field(Composite parent, String id, int width, String example, String hint) {
        Text field = Ids.name(new Text(parent, SWT.BORDER | SWT.SINGLE), id);
        field.setMessage(example);
        field.setToolTipText(hint);
        GridDataFactory.fillDefaults().hint(width, SWT.DEFAULT).applyTo(field);
        field.addModifyListener(event -> tell());
        return field;
    }

    private void tell() {
        if (!quiet) {
            changed.run();
        }
    }

    Composite control() {
        return panel;
    }

    void show(boolean visible) {
        panel.setVisible(visible);
        ((GridData) panel.getLayoutData()).exclude = !visible;
        panel.requestLayout();
        panel.getParent().requestLayout();
    }

    boolean shown() {
        return !((GridData) panel.getLayoutData()).exclude;
    }

    /** Takes all conditions away. */
    void clear() {
        quiet = true;
        amplifier.select(0);
        operator.select(0);
        for (Text field : List.of(from, to, least, most)) {
            field.setText("");
        }
        overdue.setSelection(false);
        quiet = false;
    }

    /** Offers what occurs; what is chosen stays so while it occurs. */
    void offer(List<String> amplifiers, List<String> operators) {
        boolean gone = offer(amplifier, amplifiers);
        gone |= offer(operator, operators);
        if (gone) {
            panel.getDisplay().asyncExec(() -> {
                if (!panel.isDisposed()) {
                    tell();
                }
            });
        }
    }

    private static boolean offer(Combo combo, List<String> wanted) {
        List<String> items = new ArrayList<>();
        items.add(TEXTS.text("more.any"));
        wanted.stream().filter(each -> !each.isBlank()).forEach(items::add);
        if (items.equals(List.of(combo.getItems()))) {
            return false;
        }
        int index = items.indexOf(combo.getText());
        combo.setItems(items.toArray(new String[0]));
        combo.select(Math.max(0, index));
        return index < 0;
    }

    /**
     * Returns a query with these conditions too.
     *
     * @throws FindException when a field does not hold what it must
     */
    Find narrow(Find start) throws FindException {
        Find find = start;
        if (amplifier.getSelectionIndex() > 0) {
            find = find.withAmplifier(amplifier.getText());
        }
        if (operator.getSelectionIndex() > 0) {
            find = find.withOperator(operator.getText());
        }
        if (!from.getText().isBlank()) {
            find = find.withFrom(Optional.of(day(from, 0)));
        }
        if (!to.getText().isBlank()) {
            find = find.withTo(Optional.of(day(to, 1)));
        }
        if (!least.getText().isBlank() || !most.getText().isBlank()) {
            List<FigureRange> ranges = new ArrayList<>(find.ranges());
            ranges.add(range());
            find = find.withRanges(ranges);
        }
        return overdue.getSelection() ? find.withOverdueOnly(true) : find;
    }

    private static Instant day(Text field, int daysOn) throws FindException {
        String text = field.getText().strip();
        try {
            return LocalDate.parse(text).plusDays(daysOn).atStartOfDay().toInstant(ZoneOffset.UTC);
        } catch (DateTimeParseException wrong) {
            throw new FindException(TEXTS.text("more.wrong.day", text));
        }
    }

    private FigureRange range() throws FindException {
        int index = Math.max(0, figure.getSelectionIndex());
        double unit = FIGURES.get(index).equals(FigureRange.THD) ? PERCENT : 1;
        double lower = number(least, Double.NEGATIVE_INFINITY) / unit;
        double upper = number(most, Double.POSITIVE_INFINITY) / unit;
        if (lower > upper) {
            throw new FindException(TEXTS.text("more.wrong.range", words(FIGURES.get(index))));
        }
        return new FigureRange(FIGURES.get(index), lower, upper);
    }

    private static double number(Text field, double without) throws FindException {
        String text = field.getText().strip();
        if (text.isEmpty()) {
            return without;
        }
        try {
            double value = Double.parseDouble(text.replace(',', '.'));
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException wrong) {
            throw new FindException(TEXTS.text("more.wrong.number", text));
        }
        throw new FindException(TEXTS.text("more.wrong.large", text));
    }
}
