// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Optional;
import java.util.OptionalInt;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;

/** The mouse on the strip: a click chooses, dragging moves a step or the end of a rest, the wheel zooms. */
final class ScheduleGestures {
    private static final int DRAG_START = 4;
    private static final double NOTCH_FACTOR = 1.25;
    private static final double NOTCH_COUNT = 3;

    private final ScheduleStrip strip;
    private final ScheduleStrip.Hands hands;
    private Optional<Drag> drag = Optional.empty();

    /** What is dragged; times are those at the beginning of the drag, so that nothing runs from under the pointer. */
    private static final class Drag {
        private final ScheduleSlot slot;
        private final ScheduleLanes lanes;
        private final boolean resting;
        private final int startX;
        private boolean moved;
        private int x;
        private Optional<ScheduleChange> change = Optional.empty();

        Drag(ScheduleSlot slot, ScheduleLanes lanes, boolean resting, int startX) {
            this.slot = slot;
            this.lanes = lanes;
            this.resting = resting;
            this.startX = startX;
            x = startX;
        }

        ScheduleChange wanted() {
            if (resting) {
                double seconds = slot.restSeconds() + lanes.toSeconds(x) - lanes.toSeconds(startX);
                return new ScheduleChange.Resting(slot.id(), Math.max(0, Math.rint(seconds)));
            }
            return new ScheduleChange.Moving(slot.id(), lanes.beforeAt(x, slot.id()));
        }
    }

    ScheduleGestures(ScheduleStrip strip, ScheduleStrip.Hands hands) {
        this.strip = strip;
        this.hands = hands;
        strip.addListener(SWT.MouseDown, this::press);
        strip.addListener(SWT.MouseMove, this::move);
        strip.addListener(SWT.MouseUp, event -> release());
        strip.addListener(SWT.MouseDoubleClick, this::doubleClick);
        strip.addListener(SWT.MouseExit, event -> strip.leave());
        strip.addListener(SWT.MouseVerticalWheel, this::wheel);
    }

    boolean dragging() {
        return drag.filter(each -> each.moved).isPresent();
    }

    /** Returns the step whose rest is dragged. */
    Optional<String> resting() {
        return drag.filter(each -> each.resting).map(each -> each.slot.id());
    }

    /** Returns the step that is dragged. */
    Optional<String> moving() {
        return drag.filter(each -> each.moved && !each.resting).map(each -> each.slot.id());
    }

    OptionalInt caretX() {
        return drag.filter(each -> each.moved && !each.resting)
                .map(each -> OptionalInt.of(each.x))
                .orElse(OptionalInt.empty());
    }

    private void press(Event event) {
        strip.setFocus();
        Optional<ScheduleLanes> lanes = strip.lanes();
        if (lanes.isEmpty() || event.button != 1) {
            return;
        }
        Optional<ScheduleSlot> grip = lanes.get().gripAt(event.x, event.y);
        Optional<ScheduleSlot> slot = grip.or(() -> lanes.get().stepAt(event.x, event.y));
        slot.ifPresent(each -> {
            strip.choose(each);
            if (each.movable()) {
                drag = Optional.of(new Drag(each, lanes.get(), grip.isPresent(), event.x));
            }
        });
    }

    private void move(Event event) {
        if (drag.isEmpty()) {
            strip.lanes()
                    .ifPresent(lanes -> strip.hover(
                            lanes.stepAt(event.x, event.y).map(ScheduleSlot::id),
                            lanes.gripAt(event.x, event.y).map(ScheduleSlot::id)));
            return;
        }
        Drag now = drag.get();
        now.x = event.x;
        now.moved |= Math.abs(event.x - now.startX) >= DRAG_START;
        if (now.moved) {
            Optional<ScheduleChange> wanted = Optional.of(now.wanted());
            if (!wanted.equals(now.change)) {
                now.change = wanted;
                hands.preview(wanted.get());
            }
            strip.redraw();
        }
    }

    private void release() {
        Optional<ScheduleChange> change = drag.filter(each -> each.moved).flatMap(each -> each.change);
        drag = Optional.empty();
        change.ifPresent(hands::make);
        strip.redraw();
    }

    /** Leaves everything as it was before the drag; returns whether there was one. */
    boolean giveUp() {
        boolean was = dragging();
        drag = Optional.empty();
        if (was) {
            hands.giveUp();
            strip.redraw();
        }
        return was;
    }

    /** Something else is shown: what was dragged is let go, and nobody is told. */
    void forget() {
        drag = Optional.empty();
    }

    private void doubleClick(Event event) {
        giveUp();
        strip.lanes().flatMap(lanes -> lanes.stepAt(event.x, event.y)).ifPresent(slot -> hands.reveal(slot.id()));
    }

    private void wheel(Event event) {
        event.doit = false;
        if (drag.isEmpty()) {
            strip.lanes()
                    .ifPresent(lanes ->
                            hands.zoom(lanes.toSeconds(event.x), Math.pow(NOTCH_FACTOR, event.count / NOTCH_COUNT)));
        }
    }
}
