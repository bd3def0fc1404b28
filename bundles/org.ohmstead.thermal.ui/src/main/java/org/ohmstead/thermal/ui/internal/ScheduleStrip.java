// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.ChartArea;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/**
 * Which step is on when, in line with the chart above: steps as bars, changes as lighter ones, rests hatched. Steps and the ends of rests
 * can be dragged. By keyboard: arrows choose a step, Alt with left or right moves it, plus and minus change the rest before it, Delete
 * takes the user's rest away, Escape gives up what is dragged.
 */
final class ScheduleStrip extends Canvas {
    private static final Messages TEXTS = Messages.of(ScheduleStrip.class);
    private static final int STEPS_HEIGHT = 34;
    private static final int GRIPS_HEIGHT = 14;

    private final Hands hands;
    private final ScheduleGestures gestures;
    private List<ScheduleSlot> slots = List.of();
    private Optional<ChartArea> area = Optional.empty();
    private Optional<String> selected = Optional.empty();
    private Optional<String> hovered = Optional.empty();
    private Optional<String> grip = Optional.empty();
    private Optional<String> saying = Optional.empty();
    private OptionalDouble cursorSeconds = OptionalDouble.empty();

    /** Who is told what the user does here. */
    interface Hands {
        /** A step was chosen. */
        void choose(String stepId);

        /** Something would become so when it is let go. */
        void preview(ScheduleChange change);

        /** Something is to become so. */
        void make(ScheduleChange change);

        /** What was dragged is to stay as it was. */
        void giveUp();

        /** Something is not possible. */
        void refuse(String sentence);

        /** Zooms the time axis around a moment. */
        void zoom(double seconds, double factor);

        /** Shows a step large. */
        void reveal(String stepId);
    }

    ScheduleStrip(Composite parent, Hands hands) {
        super(parent, SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        this.hands = hands;
        Ids.name(this, "forecast.strip");
        addListener(SWT.Paint, event -> paint(event.gc));
        addListener(SWT.FocusIn, event -> redraw());
        addListener(SWT.FocusOut, event -> redraw());
        gestures = new ScheduleGestures(this, hands);
        new ScheduleKeys(this, hands, gestures);
        describe();
    }

    private void describe() {
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = TEXTS.text("schedule.name", sentence());
            }
        });
        getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
            @Override
            public void getRole(AccessibleControlEvent event) {
                event.detail = ACC.ROLE_GRAPHIC;
            }
        });
    }

    /** Shows steps; what is dragged goes on. */
    void show(List<ScheduleSlot> newSlots) {
        slots = List.copyOf(newSlots);
        redraw();
        getAccessible().sendEvent(ACC.EVENT_NAME_CHANGED, null);
    }

    List<ScheduleSlot> slots() {
        return slots;
    }

    /** Lies in line with the chart's axes. */
    void setArea(Optional<ChartArea> newArea) {
        area = newArea;
        redraw();
    }

    /** Chooses a step without telling anyone. */
    void select(Optional<String> stepId) {
        selected = stepId;
        redraw();
        getAccessible().sendEvent(ACC.EVENT_NAME_CHANGED, null);
    }

    Optional<ScheduleSlot> selected() {
        return selected.flatMap(
                id -> slots.stream().filter(slot -> slot.id().equals(id)).findFirst());
    }

    /** Shows where the chart's crosshair is. */
    void setCursorSeconds(OptionalDouble seconds) {
        cursorSeconds = seconds;
        redraw();
    }

    /** Says something in the place of what stands below the lanes; empty for that again. */
    void say(Optional<String> sentence) {
        saying = sentence;
        redraw();
    }

    /** Points a step, or the end of a rest, out that the pointer is over. */
    void hover(Optional<String> step, Optional<String> newGrip) {
        if (!step.equals(hovered) || !newGrip.equals(grip)) {
            hovered = step;
            grip = newGrip;
            setCursor(
                    newGrip.isPresent()
                            ? getDisplay().getSystemCursor(SWT.CURSOR_SIZEWE)
                            : step.isPresent() ? getDisplay().getSystemCursor(SWT.CURSOR_HAND) : null);
            redraw();
        }
    }

    /** Lets go what is dragged, without telling anyone. */
    void letGo() {
        gestures.forget();
    }

    /** Returns whether the user is dragging. */
    boolean dragging() {
        return gestures.dragging();
    }

    /** Returns where everything lies; empty while there is nothing. */
    Optional<ScheduleLanes> lanes() {
        return slots.isEmpty() ? Optional.empty() : area.map(each -> new ScheduleLanes(slots, each, heights()));
    }

    private ScheduleLanes.Heights heights() {
        return new ScheduleLanes.Heights(lineHeight() + Spacing.TIGHT + 2, STEPS_HEIGHT, GRIPS_HEIGHT);
    }

    private int lineHeight() {
        GC gc = new GC(this);
        try {
            return gc.getFontMetrics().getHeight();
        } finally {
            gc.dispose();
        }
    }

    @Override
    public Point computeSize(int widthHint, int heightHint, boolean changed) {
        int height = heights().all() + lineHeight() + Spacing.TIGHT;
        return new Point(widthHint == SWT.DEFAULT ? 1 : widthHint, heightHint == SWT.DEFAULT ? height : heightHint);
    }

    /** Returns what stands below the lanes. */
    String sentence() {
        if (slots.isEmpty()) {
            return "";
        }
        return saying.or(() -> hovered.or(() -> selected)
                        .flatMap(id -> slots.stream()
                                .filter(slot -> slot.id().equals(id))
                                .findFirst())
                        .map(ScheduleSlot::sentence))
                .orElseGet(() -> TEXTS.text("schedule.how"));
    }

    private void paint(GC gc) {
        Tones tones = Tones.of(this);
        ChartLook look = tones.dark() ? ChartLook.DARK : ChartLook.LIGHT;
        gc.setBackground(SchedulePainter.colour(look.background()));
        gc.fillRectangle(getClientArea());
        Optional<ScheduleLanes> lanes = lanes();
        if (lanes.isPresent()) {
            new SchedulePainter(gc, lanes.get(), look, tones).paint(pointing(lanes.get()));
            gc.setForeground(SchedulePainter.colour(saying.isPresent() ? look.ink() : look.mutedInk()));
            gc.drawText(
                    fitting(
                            gc,
                            sentence(),
                            getClientArea().width - lanes.get().area().bounds().x - Spacing.GAP),
                    lanes.get().area().bounds().x,
                    heights().all(),
                    true);
        }
        if (isFocusControl()) {
            gc.setForeground(SchedulePainter.colour(look.tone(0)));
            gc.drawRectangle(1, 0, getClientArea().width - 3, getClientArea().height - 2);
        }
    }

    private static String fitting(GC gc, String text, int width) {
        if (gc.textExtent(text).x <= width) {
            return text;
        }
        int length = text.length();
        while (length > 1 && gc.textExtent(text.substring(0, length) + "\u2026").x > width) {
            length--;
        }
        return text.substring(0, length) + "\u2026";
    }

    private SchedulePainter.Pointing pointing(ScheduleLanes lanes) {
        OptionalInt cursorX = cursorSeconds.isPresent()
                ? OptionalInt.of((int) Math.round(lanes.toX(cursorSeconds.getAsDouble())))
                : OptionalInt.empty();
        return new SchedulePainter.Pointing(
                selected, gestures.resting().or(() -> grip), gestures.moving(), gestures.caretX(), cursorX);
    }

    /** Tells of a step that was chosen here. */
    void choose(ScheduleSlot slot) {
        if (!selected.equals(Optional.of(slot.id()))) {
            select(Optional.of(slot.id()));
            hands.choose(slot.id());
        }
    }

    @Override
    public boolean setFocus() {
        return forceFocus();
    }

    /** The pointer left. */
    void leave() {
        hover(Optional.empty(), Optional.empty());
    }
}
