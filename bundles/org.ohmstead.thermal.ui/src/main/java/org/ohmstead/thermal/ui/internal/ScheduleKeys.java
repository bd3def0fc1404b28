// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;
import org.ohmstead.thermal.plan.ScheduledJob;
import org.ohmstead.units.text.Messages;

/** The keyboard on the strip. */
final class ScheduleKeys {
    private static final Messages TEXTS = Messages.of(ScheduleKeys.class);
    private static final double REST_STEP_SECONDS = 10;

    private final ScheduleStrip strip;
    private final ScheduleStrip.Hands hands;
    private final ScheduleGestures gestures;

    ScheduleKeys(ScheduleStrip strip, ScheduleStrip.Hands hands, ScheduleGestures gestures) {
        this.strip = strip;
        this.hands = hands;
        this.gestures = gestures;
        strip.addListener(SWT.KeyDown, this::press);
        strip.addListener(SWT.Traverse, this::traverse);
    }

    private void traverse(Event event) {
        switch (event.detail) {
            case SWT.TRAVERSE_TAB_NEXT, SWT.TRAVERSE_TAB_PREVIOUS -> event.doit = true;
            case SWT.TRAVERSE_ARROW_NEXT, SWT.TRAVERSE_ARROW_PREVIOUS, SWT.TRAVERSE_RETURN -> event.doit = false;
            case SWT.TRAVERSE_ESCAPE -> event.doit = !gestures.dragging();
            default -> {
                // The control decides.
            }
        }
    }

    private void press(Event event) {
        boolean alt = (event.stateMask & SWT.MOD3) != 0;
        switch (event.keyCode) {
            case SWT.ARROW_LEFT, SWT.ARROW_UP -> across(-1, alt);
            case SWT.ARROW_RIGHT, SWT.ARROW_DOWN -> across(1, alt);
            case SWT.HOME -> choose(0);
            case SWT.END -> choose(strip.slots().size() - 1);
            case SWT.ESC -> gestures.giveUp();
            case SWT.DEL -> remove();
            case SWT.KEYPAD_ADD -> rest(REST_STEP_SECONDS);
            case SWT.KEYPAD_SUBTRACT -> rest(-REST_STEP_SECONDS);
            case SWT.CR, SWT.KEYPAD_CR -> strip.selected().ifPresent(slot -> hands.reveal(slot.id()));
            default -> type(event.character);
        }
    }

    private void type(char character) {
        switch (character) {
            case '+', '=' -> rest(REST_STEP_SECONDS);
            case '-' -> rest(-REST_STEP_SECONDS);
            default -> {
                // Any other key is not for the schedule.
            }
        }
    }

    private void choose(int index) {
        List<ScheduleSlot> slots = strip.slots();
        if (!slots.isEmpty()) {
            strip.choose(slots.get(Math.max(0, Math.min(slots.size() - 1, index))));
        }
    }

    private int index() {
        return strip.selected().map(slot -> strip.slots().indexOf(slot)).orElse(-1);
    }

    private void across(int direction, boolean moving) {
        int index = index();
        if (!moving) {
            choose(index < 0 && direction < 0 ? strip.slots().size() - 1 : index + direction);
            return;
        }
        strip.selected().filter(ScheduleSlot::movable).ifPresent(slot -> {
            int to = index + direction;
            List<ScheduleSlot> slots = strip.slots();
            if (to < 0 || to >= slots.size() || !slots.get(to).movable()) {
                hands.refuse(TEXTS.text(direction < 0 ? "schedule.first" : "schedule.last", slot.id()));
                return;
            }
            int before = direction < 0 ? to : to + 1;
            hands.make(new ScheduleChange.Moving(
                    slot.id(), before < slots.size() ? slots.get(before).id() : ""));
        });
    }

    private void rest(double more) {
        Optional<ScheduleSlot> chosen = strip.selected().filter(ScheduleSlot::movable);
        if (chosen.isEmpty()) {
            return;
        }
        ScheduleSlot slot = chosen.get();
        if (more < 0 && slot.cause() == ScheduledJob.Cause.LIMIT) {
            hands.refuse(TEXTS.text("forecast.restNeeded", slot.id(), slot.causeName()));
        } else if (more > 0 || slot.restSeconds() > 0) {
            hands.make(new ScheduleChange.Resting(slot.id(), Math.max(0, Math.rint(slot.restSeconds() + more))));
        }
    }

    private void remove() {
        strip.selected()
                .filter(ScheduleSlot::movable)
                .ifPresent(slot -> hands.make(new ScheduleChange.Resting(slot.id(), 0)));
    }
}
