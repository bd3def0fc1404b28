// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.Source;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Why it is so, with the formulas and where they come from; shown after the prediction. */
final class ExplanationPane {
    private final Composite area;
    private final PaneStyle style;

    /**
     * Makes the pane without a place.
     *
     * @param building its texts come one after the other with it
     * @param done runs when all are there
     */
    ExplanationPane(Composite parent, Lesson lesson, PaneStyle style, Slices building, Runnable done) {
        this.style = style;
        area = Ids.name(new Composite(parent, SWT.NONE), "lesson.explanation");
        Spacing.group(1).applyTo(area);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(area);
        area.setVisible(false);
        List<Runnable> parts = new ArrayList<>();
        parts.add(() -> heading("heading.explanation"));
        for (String paragraph : lesson.explanation().split("\n")) {
            parts.add(() -> text(area, paragraph));
        }
        parts.add(() -> formulas(lesson.formulas()));
        parts.add(() -> heading("heading.sources"));
        lesson.sources().forEach(source -> parts.add(() -> source(source)));
        parts.add(() -> Parts.show(area, true));
        parts.add(done);
        parts.forEach(part -> building.add(() -> {
            if (!area.isDisposed()) {
                part.run();
            }
        }));
    }

    private void formulas(List<String> formulas) {
        if (!formulas.isEmpty()) {
            Composite lines = new Composite(area, SWT.NONE);
            Spacing.tight(1).extendedMargins(2 * Spacing.GAP, 0, 0, 0).applyTo(lines);
            GridDataFactory.fillDefaults().grab(true, false).applyTo(lines);
            formulas.forEach(formula -> text(lines, formula).setFont(style.strong()));
        }
    }

    Composite control() {
        return area;
    }

    private void heading(String key) {
        Label label = style.dressStrong(new Label(area, SWT.NONE));
        label.setText(Texts.say(key));
        GridDataFactory.fillDefaults().applyTo(label);
    }

    private static Label text(Composite parent, String words) {
        Label label = new Label(parent, SWT.WRAP);
        label.setText(Texts.plain(words));
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(label);
        return label;
    }

    private void source(Source source) {
        if (source.link().isEmpty()) {
            text(area, source.text()).setForeground(Tones.of(area).mutedText());
            return;
        }
        String address = source.link().get().toString();
        Link link = new Link(area, SWT.WRAP);
        link.setText(Texts.plain(source.text()) + " <a>" + Texts.plain(address) + "</a>");
        link.addListener(SWT.Selection, event -> Program.launch(address));
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(link);
    }
}
