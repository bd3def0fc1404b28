// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The controls of a lesson, which act at once. */
final class ControlsPane {
    /** More controls than these stand close in a column. */
    private static final int MANY = 5;

    /** So that a value which is being typed is not cut off. */
    private static final int SPARE_DIGITS = 2;

    private final LessonRun run;
    private final PaneStyle style;
    private final Composite grid;
    private final Label refusal;
    private final int digits;
    private final List<ControlRow> rows = new ArrayList<>();

    /**
     * Makes the pane.
     *
     * @param building its rows come one after the other with it
     * @param complete runs when all are there
     */
    ControlsPane(Composite parent, LessonRun run, PaneStyle style, Slices building, Runnable complete) {
        this.run = run;
        this.style = style;
        digits = longest(run.lesson()) + SPARE_DIGITS;
        grid = style.dress(new Composite(parent, SWT.NONE));
        Spacing.group(style.column() ? 2 : 3)
                .spacing(Spacing.GAP, style.column() && run.lesson().controls().size() > MANY ? 0 : Spacing.TIGHT)
                .applyTo(grid);
        refusal = style.named(new Label(grid, SWT.WRAP), "controls.refusal");
        refusal.setForeground(Tones.of(grid).error());
        GridDataFactory.fillDefaults()
                .span(style.column() ? 2 : 3, 1)
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .exclude(true)
                .applyTo(refusal);
        refusal.setVisible(false);
        for (Control control : run.lesson().controls()) {
            building.add(() -> add(control));
        }
        building.add(complete);
    }

    /** Returns how many characters the longest value has: fields of one lesson are equally wide. */
    private static int longest(Lesson lesson) {
        return lesson.controls().stream()
                .filter(Control.Slider.class::isInstance)
                .map(Control.Slider.class::cast)
                .flatMap(slider -> Stream.of(slider.least(), slider.most(), slider.start())
                        .map(value -> slider.text(value, lesson.locale())))
                .mapToInt(String::length)
                .max()
                .orElse(0);
    }

    Composite control() {
        return grid;
    }

    private void add(Control control) {
        if (grid.isDisposed()) {
            return;
        }
        if (control instanceof Control.Slider slider) {
            rows.add(new SliderRow(grid, run, slider, style, digits, this::refuse));
        } else if (control instanceof Control.Choice choice) {
            rows.add(OptionRow.of(grid, run, choice, style));
        } else if (control instanceof Control.Switch each) {
            rows.add(OptionRow.of(grid, run, each, style));
        }
        refusal.moveBelow(null);
        if (grid.getSize().x > 0) {
            // All rows at once, at the end, would take too long for one event; those that are there keep their sizes.
            grid.layout(false);
        }
    }

    private void refuse(String sentence) {
        Parts.say(refusal, sentence);
    }

    /** Shows where the controls stand. */
    void show() {
        rows.forEach(row -> row.show(run.values()));
    }
}
