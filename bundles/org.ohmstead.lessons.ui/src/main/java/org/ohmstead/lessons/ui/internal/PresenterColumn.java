// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Tones;

/** The controls before a room: a column that stays while the steps beside it change, so that a slider keeps the focus. */
final class PresenterColumn {
    private static final double SHARE = 0.36;
    private static final double SMALLER = 0.85;
    private static final double SMALLEST_POINTS = 9;

    private final Composite place;
    private final LessonRun run;
    private final PresenterType type;
    private final Tones tones;
    private final Slices building;
    private Optional<ControlsPane> pane = Optional.empty();
    private double points = PresenterType.LEAST_POINTS;

    /**
     * Makes the column; its rows come in the next turns of the event loop.
     *
     * @param place where it stands, of its final size
     */
    PresenterColumn(Composite place, LessonRun run, PresenterType type, Tones tones) {
        this.place = place;
        this.run = run;
        this.type = type;
        this.tones = tones;
        building = new Slices(place);
        make();
    }

    private void make() {
        PaneStyle style = new PaneStyle(
                PresenterPage.PREFIX,
                Optional.of(type.font(points, false)),
                type.font(points, true),
                Optional.of(tones.background()),
                Optional.of(tones.text()),
                true);
        pane = Optional.of(new ControlsPane(place, run, style, building, this::fit));
        control().setBounds(0, 0, width(place), place.getClientArea().height);
    }

    /** A lesson with very many controls is set smaller, rather than cut off. */
    private void fit() {
        Composite control = control();
        if (control.isDisposed()) {
            return;
        }
        int needed = control.computeSize(width(place), SWT.DEFAULT, false).y;
        if (needed > place.getClientArea().height && points * SMALLER > SMALLEST_POINTS) {
            points *= SMALLER;
            control.dispose();
            make();
        }
        place.layout(false);
    }

    /** Returns the width of a column in a place. */
    static int width(Composite place) {
        return (int) (SHARE * place.getClientArea().width);
    }

    Composite control() {
        return pane.orElseThrow().control();
    }

    /** Returns the size that it is set in, in points at a height of 720 pixels. */
    double points() {
        return points;
    }

    /** Returns whether all rows are there. */
    boolean complete() {
        return building.done();
    }

    /** Shows where the controls stand. */
    void show() {
        if (!control().isDisposed()) {
            pane.orElseThrow().show();
        }
    }

    void dispose() {
        building.clear();
        control().dispose();
    }
}
