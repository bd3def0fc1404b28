// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Option;

/** Makes rows for what is not a slider: one of a few options, or a switch, with its name. */
final class OptionRow {
    private OptionRow() {}

    /** Makes a row of options; the grid as for a {@link SliderRow}. */
    static ControlRow of(Composite grid, LessonRun run, Control.Choice choice, PaneStyle style) {
        style.name(grid, choice.label());
        Combo combo = style.named(new Combo(grid, SWT.DROP_DOWN | SWT.READ_ONLY), "control." + choice.id());
        combo.setItems(choice.options().stream().map(Option::text).toArray(String[]::new));
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).applyTo(combo);
        combo.addListener(SWT.Selection, event -> run.set(choice.id(), combo.getSelectionIndex()));
        combo.addListener(SWT.MouseVerticalWheel, event -> event.doit = false);
        combo.select((int) run.values().number(choice.id()));
        return values -> {
            int chosen = (int) values.number(choice.id());
            if (combo.getSelectionIndex() != chosen) {
                combo.select(chosen);
            }
        };
    }

    /** Makes a row with a switch. */
    static ControlRow of(Composite grid, LessonRun run, Control.Switch control, PaneStyle style) {
        style.name(grid, control.label());
        Button box = style.named(new Button(grid, SWT.CHECK), "control." + control.id());
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).applyTo(box);
        box.addListener(SWT.Selection, event -> run.set(control.id(), box.getSelection() ? 1 : 0));
        ControlRow row = values -> {
            box.setSelection(values.isOn(control.id()));
            box.setText(Texts.plain(values.text(control.id(), run.lesson().locale())));
        };
        row.show(run.values());
        return row;
    }
}
