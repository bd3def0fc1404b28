// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Tones;

/** The figures of a lesson, one a line; those that give the answer away are covered until the prediction is made. */
final class FiguresPane {
    private static final int TWO_COLUMNS = 460;

    private final PaneStyle style;
    private final boolean onlyGiven;
    private final Composite grid;
    private final List<Label> values = new ArrayList<>();
    private List<String> names = List.of();

    /**
     * Makes the pane.
     *
     * @param onlyGiven whether figures that give the answer away are left out instead of covered
     */
    FiguresPane(Composite parent, PaneStyle style, boolean onlyGiven) {
        this.style = style;
        this.onlyGiven = onlyGiven;
        grid = style.dress(new Composite(parent, SWT.NONE));
        grid.setLayout(new FigureRows(style.column() ? Integer.MAX_VALUE : TWO_COLUMNS));
    }

    Composite control() {
        return grid;
    }

    /** Shows what the model gave last. */
    void show(LessonRun run) {
        run.result().ifPresent(result -> show(run, result));
    }

    private void show(LessonRun run, LessonResult result) {
        List<Figure> figures = onlyGiven ? result.figuresBefore() : result.figures();
        List<String> wanted = figures.stream().map(Figure::name).toList();
        boolean others = !wanted.equals(names);
        if (others) {
            names = wanted;
            makeRows(figures);
        }
        boolean resized = false;
        for (int i = 0; i < figures.size(); i++) {
            resized |= put(values.get(i), figures.get(i), run);
        }
        // A wider value may make its name wrap, so that the whole pane is to be higher.
        if (others || resized && grid.computeSize(grid.getSize().x, SWT.DEFAULT).y != grid.getSize().y) {
            grid.requestLayout();
        } else if (resized) {
            grid.layout(true);
        }
    }

    private void makeRows(List<Figure> figures) {
        for (Control each : grid.getChildren()) {
            each.dispose();
        }
        values.clear();
        for (Figure figure : figures) {
            Label name = style.dress(new Label(grid, SWT.WRAP));
            name.setText(Texts.plain(figure.name()));
            Label value = style.dressStrong(new Label(grid, SWT.RIGHT));
            Ids.name(value, style.prefix() + "figure." + figure.id());
            values.add(value);
        }
    }

    /** Returns whether the text became another. */
    private boolean put(Label label, Figure figure, LessonRun run) {
        boolean covered = figure.revealing() && !run.open();
        String text = covered
                ? Texts.say("figure.covered")
                : Texts.plain(figure.text(run.lesson().locale()));
        if (text.equals(label.getText())) {
            return false;
        }
        label.setText(text);
        label.setForeground(
                covered ? Tones.of(grid).mutedText() : Tones.of(grid).text());
        return true;
    }
}
