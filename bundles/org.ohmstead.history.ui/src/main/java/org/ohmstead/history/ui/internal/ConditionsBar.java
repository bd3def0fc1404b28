// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.jface.layout.RowLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.RowData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** Chooses under what is compared, and in whose money. */
final class ConditionsBar {
    private static final Messages TEXTS = Messages.of(ConditionsBar.class);

    private static final int NUMBER_CHARS = 6;

    private final Composite area;
    private final Text volts;
    private final Combo load;
    private final Combo mode;
    private final Combo kind;
    private final Button index;
    private final Combo base;
    private final MessageLine message;
    private final Supplier<Optional<Path>> files;
    private final Consumer<CompareChoice> changed;
    private CompareChoice choice = CompareChoice.USUAL;
    private List<String> periods = List.of();

    /**
     * Makes the bar.
     *
     * @param files asks for the table of a price index; empty when the user does not want one after all
     * @param changed hears what is chosen from now on
     * @param copy copies the table
     */
    ConditionsBar(Composite parent, Supplier<Optional<Path>> files, Consumer<CompareChoice> changed, Runnable copy) {
        this.files = files;
        this.changed = changed;
        area = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(area);
        Composite row = new Composite(area, SWT.NONE);
        RowLayoutFactory.fillDefaults()
                .wrap(true)
                .center(true)
                .spacing(Spacing.GAP)
                .applyTo(row);
        GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(row);
        Composite voltsGroup = group(row, TEXTS.text("conditions.volts"));
        volts = Ids.name(new Text(voltsGroup, SWT.BORDER | SWT.SINGLE | SWT.RIGHT), "compare.volts");
        volts.setToolTipText(TEXTS.text("conditions.volts.hint"));
        size(volts);
        volts.addListener(SWT.DefaultSelection, event -> voltsTyped());
        volts.addListener(SWT.FocusOut, event -> voltsTyped());
        label(voltsGroup, "V");
        Composite loadGroup = group(row, TEXTS.text("conditions.load"));
        load = Ids.name(new Combo(loadGroup, SWT.DROP_DOWN), "compare.load");
        load.setToolTipText(TEXTS.text("conditions.load.hint"));
        size(load);
        load.addListener(SWT.DefaultSelection, event -> loadTyped());
        load.addListener(SWT.FocusOut, event -> loadTyped());
        load.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> loadTyped()));
        label(loadGroup, "\u03a9");
        mode = combo(row, "compare.mode", TEXTS.text("conditions.mode.hint"), Mode.values(), Shown::words);
        mode.addSelectionListener(SelectionListener.widgetSelectedAdapter(
                event -> tell(choice.withMode(Mode.values()[mode.getSelectionIndex()]))));
        kind = combo(row, "compare.kind", TEXTS.text("conditions.kind.hint"), PowerKind.values(), Shown::words);
        kind.addSelectionListener(SelectionListener.widgetSelectedAdapter(
                event -> tell(choice.withKind(PowerKind.values()[kind.getSelectionIndex()]))));
        Composite money = group(row, TEXTS.text("conditions.prices"));
        base = Ids.name(new Combo(money, SWT.READ_ONLY), "compare.base");
        base.setToolTipText(TEXTS.text("conditions.prices.hint"));
        base.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> baseChosen()));
        index = Ids.name(new Button(money, SWT.PUSH), "compare.index");
        index.setText(TEXTS.text("conditions.index"));
        index.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> chooseIndex()));
        Button copied = Ids.name(new Button(row, SWT.PUSH), "compare.copy");
        copied.setText(TEXTS.text("conditions.copy"));
        copied.setToolTipText(TEXTS.text("conditions.copy.hint"));
        copied.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> copy.run()));
        message = new MessageLine(area, "compare.conditions.message");
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(message);
        message.setVisible(false);
        show(choice, CompareAnswer.NOTHING);
    }

    /** What belongs together is not parted where the row breaks. */
    private static Composite group(Composite row, String title) {
        Composite group = new Composite(row, SWT.NONE);
        RowLayoutFactory.fillDefaults()
                .wrap(false)
                .center(true)
                .spacing(Spacing.TIGHT)
                .applyTo(group);
        label(group, title);
        return group;
    }

    private static void label(Composite row, String text) {
        new Label(row, SWT.NONE).setText(text);
    }

    private static void size(Control field) {
        int chars = field instanceof Combo ? 2 * NUMBER_CHARS : NUMBER_CHARS;
        field.setLayoutData(new RowData(new PixelConverter(field).convertWidthInCharsToPixels(chars), SWT.DEFAULT));
    }

    private static <T> Combo combo(Composite row, String id, String hint, T[] values, Function<T, String> words) {
        Combo combo = Ids.name(new Combo(row, SWT.READ_ONLY), id);
        combo.setToolTipText(hint);
        for (T value : values) {
            combo.add(words.apply(value));
        }
        return combo;
    }

    Composite control() {
        return area;
    }

    /** Shows what is chosen and what an answer offers, without telling. */
    void show(CompareChoice newChoice, CompareAnswer answer) {
        choice = newChoice;
        if (!volts.isFocusControl()) {
            volts.setText(Shown.editable(choice.supplyVolts()));
        }
        List<String> loads =
                new ArrayList<>(answer.loadsOhms().stream().map(Shown::editable).toList());
        if (!loads.equals(List.of(load.getItems()))) {
            load.setItems(loads.toArray(String[]::new));
        }
        if (!load.isFocusControl() || load.getText().isEmpty()) {
            load.setText(Shown.editable(choice.loadOhms()));
        }
        mode.select(choice.mode().ordinal());
        kind.select(choice.kind().ordinal());
        showMoney(answer.indexPeriods());
    }

    private void showMoney(List<String> newPeriods) {
        periods = List.copyOf(newPeriods);
        List<String> texts = new ArrayList<>(List.of(TEXTS.text("conditions.prices.paid")));
        periods.forEach(period -> texts.add(TEXTS.text("conditions.prices.of", period)));
        if (!texts.equals(List.of(base.getItems()))) {
            base.setItems(texts.toArray(String[]::new));
            base.requestLayout();
        }
        base.select(1 + periods.indexOf(choice.basePeriod()));
        base.setEnabled(texts.size() > 1);
        index.setToolTipText(choice.indexFile()
                .map(file -> TEXTS.text("conditions.index.other", file.toString()))
                .orElseGet(() -> TEXTS.text("conditions.index.hint")));
    }

    private void voltsTyped() {
        typed(volts.getText(), choice.supplyVolts(), "conditions.volts.wrong")
                .ifPresent(value -> tell(choice.withSupplyVolts(value)));
    }

    private void loadTyped() {
        typed(load.getText(), choice.loadOhms(), "conditions.load.wrong")
                .ifPresent(value -> tell(choice.withLoadOhms(value)));
    }

    /** Returns what was typed when it is another number than before; says what is wrong with it. */
    private Optional<Double> typed(String text, double before, String wrong) {
        Optional<Double> read = Shown.read(text).filter(value -> value > 0);
        if (read.isEmpty()) {
            say(TEXTS.text(wrong, text.strip()));
            return Optional.empty();
        }
        say("");
        return read.filter(value -> value != before);
    }

    private void say(String sentence) {
        if (sentence.isEmpty() == message.getVisible()) {
            message.setVisible(!sentence.isEmpty());
            ((GridData) message.getLayoutData()).exclude = sentence.isEmpty();
        }
        if (sentence.isEmpty()) {
            message.clear();
        } else {
            message.show(Severity.ERROR, sentence);
        }
        area.requestLayout();
    }

    private void baseChosen() {
        int at = base.getSelectionIndex();
        tell(choice.withIndex(choice.indexFile(), at < 1 ? "" : periods.get(at - 1)));
    }

    private void chooseIndex() {
        files.get().ifPresent(file -> tell(choice.withIndex(Optional.of(file), choice.basePeriod())));
    }

    private void tell(CompareChoice newChoice) {
        choice = newChoice;
        changed.accept(newChoice);
    }
}
