// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.signal.sound.SoundSeries;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** Which series is shown and compared, and what is known of its meter. */
final class SeriesBar {
    private static final double MOST_DB = 20;

    private final SeriesShelf shelf;
    private final Composite area;
    private final Combo series;
    private final Combo other;
    private final Button fresh;
    private final Button copy;
    private final Button undo;
    private final Text meter;
    private final NumberEntry common;
    private final NumberEntry repeat;
    private boolean showing;

    SeriesBar(Composite parent, SeriesShelf shelf) {
        this.shelf = shelf;
        area = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(area);
        Composite first = row(5);
        label(first, "bar.series");
        series = combo(first, "sound.series", "bar.series.hint");
        fresh = button(first, "sound.new", "bar.new", "bar.new.hint");
        copy = button(first, "sound.copy", "bar.copy", "bar.copy.hint");
        undo = button(first, "sound.undo", "bar.undo", "bar.undo.hint");
        Composite second = row(2);
        label(second, "bar.other");
        other = combo(second, "sound.other", "bar.other.hint");
        Composite third = row(8);
        label(third, "bar.meter");
        meter = Ids.name(new Text(third, SWT.BORDER | SWT.SINGLE), "sound.meter");
        meter.setToolTipText(Texts.say("bar.meter.hint"));
        GridDataFactory.fillDefaults().grab(true, false).hint(60, SWT.DEFAULT).applyTo(meter);
        Measure decibels = Measure.of(Unit.DECIBEL);
        common = new NumberEntry(third, "sound.common", "bar.common", decibels, SeriesBar::uncertainty, () -> {});
        common.control().setToolTipText(Texts.say("bar.common.hint"));
        repeat = new NumberEntry(third, "sound.repeat", "bar.repeat", decibels, SeriesBar::uncertainty, () -> {});
        repeat.control().setToolTipText(Texts.say("bar.repeat.hint"));
        series.addListener(SWT.Selection, event -> shelf.choose(series.getText()));
        other.addListener(
                SWT.Selection,
                event -> shelf.compareWith(
                        other.getSelectionIndex() <= 0 ? Optional.empty() : Optional.of(other.getText())));
        fresh.addListener(SWT.Selection, event -> shelf.begin(false));
        copy.addListener(SWT.Selection, event -> shelf.begin(true));
        undo.addListener(SWT.Selection, event -> shelf.undo());
        for (Text text : List.of(meter, common.control(), repeat.control())) {
            text.addListener(SWT.FocusOut, event -> edited());
            text.addListener(SWT.DefaultSelection, event -> edited());
        }
    }

    private static boolean uncertainty(double value) {
        return value >= 0 && value <= MOST_DB;
    }

    private Composite row(int columns) {
        Composite row = new Composite(area, SWT.NONE);
        Spacing.group(columns).applyTo(row);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(row);
        return row;
    }

    private static void label(Composite row, String key) {
        Label label = new Label(row, SWT.NONE);
        label.setText(Texts.say(key));
        GridDataFactory.swtDefaults().applyTo(label);
    }

    private static Combo combo(Composite row, String id, String hint) {
        Combo combo = Ids.name(new Combo(row, SWT.DROP_DOWN | SWT.READ_ONLY), id);
        combo.setToolTipText(Texts.say(hint));
        GridDataFactory.fillDefaults().grab(true, false).hint(80, SWT.DEFAULT).applyTo(combo);
        return combo;
    }

    private static Button button(Composite row, String id, String key, String hint) {
        Button button = Ids.name(new Button(row, SWT.PUSH), id);
        button.setText(Texts.say(key));
        button.setToolTipText(Texts.say(hint));
        return button;
    }

    Composite control() {
        return area;
    }

    private void edited() {
        if (!showing && common.value().isPresent() && repeat.value().isPresent()) {
            SoundSeries now = shelf.series();
            shelf.change(new SoundSeries(
                    now.name(),
                    meter.getText().strip(),
                    common.value().getAsDouble(),
                    repeat.value().getAsDouble(),
                    now.points()));
        }
    }

    /** Shows what the shelf holds. */
    void show() {
        showing = true;
        fill(series, shelf.names(), shelf.name());
        List<String> others = new ArrayList<>(List.of(Texts.say("bar.none")));
        shelf.names().stream()
                .filter(each -> !shelf.name().equals(Optional.of(each)))
                .forEach(others::add);
        fill(other, others, shelf.otherName().or(() -> Optional.of(others.get(0))));
        SoundSeries now = shelf.series();
        if (!meter.getText().strip().equals(now.meter())) {
            meter.setText(now.meter());
        }
        if (common.value().isEmpty() || common.value().getAsDouble() != now.commonDb()) {
            common.show(now.commonDb());
        }
        if (repeat.value().isEmpty() || repeat.value().getAsDouble() != now.repeatDb()) {
            repeat.show(now.repeatDb());
        }
        series.setEnabled(!shelf.names().isEmpty());
        other.setEnabled(others.size() > 1);
        fresh.setEnabled(shelf.changeable());
        copy.setEnabled(shelf.changeable() && shelf.name().isPresent());
        undo.setEnabled(shelf.canUndo());
        for (Text text : List.of(meter, common.control(), repeat.control())) {
            text.setEditable(shelf.changeable());
        }
        showing = false;
    }

    private static void fill(Combo combo, List<String> items, Optional<String> chosen) {
        if (!List.of(combo.getItems()).equals(items)) {
            combo.setItems(items.toArray(String[]::new));
        }
        combo.select(chosen.map(items::indexOf).orElse(-1));
        if (chosen.isEmpty()) {
            combo.deselectAll();
        }
    }
}
