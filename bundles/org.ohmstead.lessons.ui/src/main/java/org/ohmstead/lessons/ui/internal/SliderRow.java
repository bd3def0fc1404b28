// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Scale;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;

/** A slider with its name and its value, which can be typed as well. What does not read is said, and the value before comes back. */
final class SliderRow implements ControlRow {

    private static final int LEAST_SCALE = 90;

    private final LessonRun run;
    private final Control.Slider slider;
    private final SliderPlaces places;
    private final Consumer<String> refusals;
    private final Scale scale;
    private final Text entry;

    /**
     * Makes a row.
     *
     * @param grid three columns for name, slider and value; in a style of columns two, and the slider comes below
     * @param digits how many digits the field has room for
     * @param refusals hears what is wrong with what was typed; an empty text when nothing is
     */
    SliderRow(
            Composite grid,
            LessonRun run,
            Control.Slider slider,
            PaneStyle style,
            int digits,
            Consumer<String> refusals) {
        this.run = run;
        this.slider = slider;
        this.refusals = refusals;
        places = new SliderPlaces(slider);
        style.name(grid, slider.label());
        scale = makeScale(grid, style);
        entry = makeEntry(grid, style, digits);
        show(run.values());
    }

    private Scale makeScale(Composite grid, PaneStyle style) {
        Scale made = style.named(new Scale(grid, SWT.HORIZONTAL), "control." + slider.id());
        made.setMinimum(0);
        made.setMaximum(places.last());
        made.setIncrement(1);
        made.setPageIncrement(places.page());
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .hint(LEAST_SCALE, SWT.DEFAULT)
                .applyTo(made);
        made.addListener(SWT.Selection, event -> {
            refusals.accept("");
            run.set(slider.id(), places.value(made.getSelection()));
        });
        // Whoever rolls the wheel wants to scroll; a slider under the pointer must not move unnoticed.
        made.addListener(SWT.MouseVerticalWheel, event -> event.doit = false);
        made.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = Texts.say("setting", slider.label(), shown());
            }
        });
        return made;
    }

    private Text makeEntry(Composite grid, PaneStyle style, int digits) {
        Text made = Fields.make(grid, style, "control." + slider.id() + ".value", 1, digits);
        made.setToolTipText(Texts.say(
                "entry.hint",
                slider.text(slider.least(), run.lesson().locale()),
                slider.text(slider.most(), run.lesson().locale())));
        made.addListener(SWT.DefaultSelection, event -> takeTyped());
        made.addListener(SWT.FocusOut, event -> takeTyped());
        made.addListener(SWT.KeyDown, this::step);
        made.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = slider.label();
            }
        });
        return made;
    }

    private void step(Event event) {
        int steps = event.keyCode == SWT.ARROW_UP ? 1 : event.keyCode == SWT.ARROW_DOWN ? -1 : 0;
        if (steps != 0) {
            event.doit = false;
            int place = places.place(run.values().number(slider.id())) + steps;
            run.set(slider.id(), places.value(Math.max(0, Math.min(places.last(), place))));
        }
    }

    private void takeTyped() {
        if (entry.isDisposed() || entry.getText().equals(shown())) {
            return;
        }
        TypedValue typed =
                TypedValue.of(entry.getText(), slider, shown(), run.lesson().locale());
        refusals.accept(typed.refusal());
        typed.value().ifPresent(value -> run.set(slider.id(), value));
        entry.setText(shown());
    }

    private String shown() {
        return run.values().text(slider.id(), run.lesson().locale());
    }

    @Override
    public void show(Controls values) {
        int place = places.place(values.number(slider.id()));
        if (scale.getSelection() != place) {
            scale.setSelection(place);
        }
        if (!shown().equals(entry.getText())) {
            entry.setText(shown());
        }
    }
}
