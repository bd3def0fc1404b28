// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.ohmstead.plot.chart.ChartLayout;
import org.ohmstead.plot.ui.ChosenPoint;
import org.ohmstead.plot.ui.ViewWindow;

/**
 * The mouse: the wheel zooms around the pointer, dragging zooms into a rectangle, dragging with the middle button, or
 * with Alt or the space bar held, pans; a click chooses a point, a double click shows the whole. The line that can be
 * dragged goes with the pointer.
 */
public final class PointerGestures {
    private static final double NOTCH_FACTOR = 1.25;
    private static final double NOTCH_COUNT = 3;
    private static final int DRAG_START = 5;
    private static final int FLAT = 12;
    private static final int LINE_REACH = 4;

    private enum Drag {
        NONE,
        ZOOM,
        PAN,
        LINE
    }

    private final Control control;
    private final ChartModel model;
    private Drag drag = Drag.NONE;
    private boolean moved;
    private boolean spaceHeld;
    private Point start = new Point(0, 0);
    private Optional<ViewWindow> startWindow = Optional.empty();
    private ChartLayout startLayout;

    /** Listens to the control and changes the model. */
    public PointerGestures(Control control, ChartModel model) {
        this.control = control;
        this.model = model;
        control.addListener(SWT.MouseVerticalWheel, this::wheel);
        control.addListener(SWT.MouseDown, this::press);
        control.addListener(SWT.MouseMove, this::move);
        control.addListener(SWT.MouseUp, this::release);
        control.addListener(SWT.MouseDoubleClick, event -> doubleClick());
        control.addListener(SWT.MouseExit, event -> leave());
        control.addListener(SWT.KeyDown, event -> spaceHeld |= event.keyCode == ' ');
        control.addListener(SWT.KeyUp, event -> spaceHeld &= event.keyCode != ' ');
        control.addListener(SWT.FocusOut, event -> spaceHeld = false);
    }

    private Optional<ChartLayout> layout() {
        return model.picture().map(Picture::layout);
    }

    private void wheel(Event event) {
        event.doit = false;
        layout().ifPresent(layout -> {
            double factor = Math.pow(NOTCH_FACTOR, event.count / NOTCH_COUNT);
            boolean onlyX = (event.stateMask & SWT.MOD1) != 0 || event.y > layout.top() + layout.height();
            boolean onlyY = (event.stateMask & SWT.MOD2) != 0 || event.x < layout.left();
            model.zoomAround(
                    layout.x().toValue(event.x),
                    layout.y().toValue(event.y),
                    onlyY ? 1 : factor,
                    onlyX && !onlyY ? 1 : factor);
        });
    }

    private void press(Event event) {
        control.setFocus();
        boolean pan = event.button == 2 || event.button == 1 && (spaceHeld || (event.stateMask & SWT.MOD3) != 0);
        if (layout().isEmpty() || !pan && event.button != 1) {
            return;
        }
        drag = pan ? Drag.PAN : onLine(event) ? Drag.LINE : Drag.ZOOM;
        moved = false;
        start = new Point(event.x, event.y);
        startWindow = model.window();
        startLayout = layout().get();
        if (pan) {
            control.setCursor(control.getDisplay().getSystemCursor(SWT.CURSOR_SIZEALL));
        }
    }

    private void move(Event event) {
        if (drag == Drag.NONE) {
            point(event);
            return;
        }
        int acrossPixels = event.x - start.x;
        int downPixels = event.y - start.y;
        moved |= Math.abs(acrossPixels) >= DRAG_START || Math.abs(downPixels) >= DRAG_START;
        if (!moved) {
            return;
        }
        if (drag == Drag.LINE) {
            model.dragLine(startLayout.x().toValue(event.x));
        } else if (drag == Drag.PAN) {
            model.moveFrom(startWindow, -acrossPixels / startLayout.width(), downPixels / startLayout.height());
        } else {
            model.setRubberBand(Optional.of(band(event)));
        }
    }

    /** The rectangle between press and pointer, inside the axes; the whole height or width where it is flat. */
    private Rectangle band(Event event) {
        int left = (int) Math.ceil(startLayout.left());
        int top = (int) Math.ceil(startLayout.top());
        int right = (int) Math.floor(startLayout.left() + startLayout.width());
        int bottom = (int) Math.floor(startLayout.top() + startLayout.height());
        int fromX = Math.max(left, Math.min(right, Math.min(start.x, event.x)));
        int toX = Math.max(left, Math.min(right, Math.max(start.x, event.x)));
        int fromY = Math.max(top, Math.min(bottom, Math.min(start.y, event.y)));
        int toY = Math.max(top, Math.min(bottom, Math.max(start.y, event.y)));
        boolean wide = Math.abs(event.y - start.y) < FLAT;
        boolean tall = Math.abs(event.x - start.x) < FLAT && !wide;
        return new Rectangle(
                tall ? left : fromX,
                wide ? top : fromY,
                tall ? right - left : toX - fromX,
                wide ? bottom - top : toY - fromY);
    }

    private void release(Event event) {
        Drag ended = drag;
        drag = Drag.NONE;
        control.setCursor(null);
        if (ended == Drag.ZOOM && moved) {
            Rectangle band = band(event);
            model.setRubberBand(Optional.empty());
            if (band.width > 1 && band.height > 1) {
                zoomInto(band);
            }
        } else if (ended == Drag.ZOOM || ended == Drag.LINE && !moved) {
            hit(event).ifPresent(model::choose);
        }
    }

    private void zoomInto(Rectangle band) {
        boolean wholeHeight = band.height >= (int) Math.floor(startLayout.height()) - 1;
        double lowerX = startLayout.x().toValue(band.x);
        double upperX = startLayout.x().toValue(band.x + band.width);
        if (wholeHeight) {
            model.zoomTo(Optional.of(new ViewWindow(
                    lowerX,
                    upperX,
                    startWindow.map(ViewWindow::lowerY).orElse(OptionalDouble.empty()),
                    startWindow.map(ViewWindow::upperY).orElse(OptionalDouble.empty()))));
            return;
        }
        boolean wholeWidth = band.width >= (int) Math.floor(startLayout.width()) - 1;
        model.zoomTo(Optional.of(ViewWindow.of(
                wholeWidth ? startLayout.x().lower() : lowerX,
                wholeWidth ? startLayout.x().upper() : upperX,
                startLayout.y().toValue(band.y + band.height),
                startLayout.y().toValue(band.y))));
    }

    private void doubleClick() {
        drag = Drag.NONE;
        model.setRubberBand(Optional.empty());
        model.zoomTo(Optional.empty());
    }

    private void leave() {
        if (drag == Drag.NONE) {
            model.setCursor(OptionalDouble.empty(), Optional.empty());
        }
    }

    private boolean onLine(Event event) {
        return layout().isPresent()
                && model.line().isPresent()
                && Math.abs(layout().get().x().toPosition(model.line().getAsDouble()) - event.x) <= LINE_REACH
                && event.y <= layout().get().top() + layout().get().height();
    }

    private Optional<ChosenPoint> hit(Event event) {
        return model.picture().flatMap(picture -> new ReadOutFinder(picture).hit(event.x, event.y));
    }

    private void point(Event event) {
        layout().ifPresent(layout -> {
            boolean inside = event.x >= layout.left()
                    && event.x <= layout.left() + layout.width()
                    && event.y >= layout.top()
                    && event.y <= layout.top() + layout.height();
            Optional<ChosenPoint> hit = inside ? hit(event) : Optional.empty();
            boolean draggable = inside && onLine(event);
            control.setCursor(draggable ? control.getDisplay().getSystemCursor(SWT.CURSOR_SIZEWE) : null);
            double x = hit.map(ChosenPoint::x).orElseGet(() -> layout.x().toValue(event.x));
            model.setCursor(inside ? OptionalDouble.of(x) : OptionalDouble.empty(), hit);
        });
    }
}
