// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.ohmstead.plot.chart.ChartLayout;

/**
 * The keyboard: arrows pan, plus and minus zoom, zero and Home show the whole; with Ctrl the left and right arrows move
 * the crosshair, with Shift too to the next data point; Escape shows the whole, then takes the crosshair away. Comma and
 * full stop move the line that can be dragged.
 */
public final class KeyGestures {
    private static final double PAN_SHARE = 0.1;
    private static final double ZOOM_FACTOR = 1.5;
    private static final double CURSOR_SHARE = 0.01;

    private final ChartModel model;

    /** Listens to the control and changes the model. */
    public KeyGestures(Control control, ChartModel model) {
        this.model = model;
        control.addListener(SWT.KeyDown, this::press);
        control.addListener(SWT.Traverse, this::traverse);
    }

    private void traverse(Event event) {
        switch (event.detail) {
            case SWT.TRAVERSE_TAB_NEXT, SWT.TRAVERSE_TAB_PREVIOUS -> event.doit = true;
            case SWT.TRAVERSE_ARROW_NEXT, SWT.TRAVERSE_ARROW_PREVIOUS -> event.doit = false;
            case SWT.TRAVERSE_ESCAPE -> event.doit = nothingToUndo();
            default -> {
                // The control decides.
            }
        }
    }

    private boolean nothingToUndo() {
        return model.window().isEmpty() && model.cursor().isEmpty();
    }

    private void press(Event event) {
        boolean control = (event.stateMask & SWT.MOD1) != 0;
        boolean shift = (event.stateMask & SWT.MOD2) != 0;
        switch (event.keyCode) {
            case SWT.ARROW_LEFT -> across(-1, control, shift);
            case SWT.ARROW_RIGHT -> across(1, control, shift);
            case SWT.ARROW_UP -> model.move(0, PAN_SHARE);
            case SWT.ARROW_DOWN -> model.move(0, -PAN_SHARE);
            case SWT.HOME -> model.zoomTo(Optional.empty());
            case SWT.ESC -> escape();
            case SWT.KEYPAD_ADD -> zoom(ZOOM_FACTOR);
            case SWT.KEYPAD_SUBTRACT -> zoom(1 / ZOOM_FACTOR);
            default -> type(event.character);
        }
    }

    private void type(char character) {
        switch (character) {
            case '+', '=' -> zoom(ZOOM_FACTOR);
            case '-' -> zoom(1 / ZOOM_FACTOR);
            case ',' -> moveLine(-1);
            case '.' -> moveLine(1);
            case '0' -> model.zoomTo(Optional.empty());
            default -> {
                // Any other key is not for charts.
            }
        }
    }

    private void moveLine(int direction) {
        model.picture()
                .map(Picture::layout)
                .filter(layout -> model.line().isPresent())
                .ifPresent(layout -> {
                    double from = layout.x().toPosition(model.line().getAsDouble());
                    model.dragLine(layout.x().toValue(from + direction * CURSOR_SHARE * layout.width()));
                });
    }

    private void escape() {
        if (model.window().isPresent()) {
            model.zoomTo(Optional.empty());
        } else {
            model.setCursor(OptionalDouble.empty(), Optional.empty());
        }
    }

    private void zoom(double factor) {
        model.picture().map(Picture::layout).ifPresent(layout -> {
            double middleX = layout.x().toValue(layout.left() + layout.width() / 2);
            double middleY = layout.y().toValue(layout.top() + layout.height() / 2);
            model.zoomAround(model.cursor().orElse(middleX), middleY, factor, factor);
        });
    }

    private void across(int direction, boolean cursor, boolean toPoint) {
        if (!cursor) {
            model.move(direction * PAN_SHARE, 0);
            return;
        }
        model.picture().ifPresent(picture -> {
            ChartLayout layout = picture.layout();
            double middle = layout.x().toValue(layout.left() + layout.width() / 2);
            double from = model.cursor().orElse(middle);
            OptionalDouble point =
                    toPoint ? new ReadOutFinder(picture).nextPoint(from, direction) : OptionalDouble.empty();
            double step = layout.x().toValue(layout.x().toPosition(from) + direction * CURSOR_SHARE * layout.width());
            double wanted = point.orElse(toPoint ? from : step);
            double inside = Math.max(layout.x().lower(), Math.min(layout.x().upper(), wanted));
            model.setCursor(OptionalDouble.of(inside), Optional.empty());
        });
    }
}
