// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Optional;
import java.util.OptionalInt;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Paints the lanes of a schedule. */
final class SchedulePainter {
    private static final Messages TEXTS = Messages.of(SchedulePainter.class);
    private static final double CHANGE_SHARE = 0.3;
    private static final double REST_SHARE = 0.3;
    private static final int HATCH = 5;
    private static final int STRIPE = 3;
    private static final int FAINT = 120;
    private static final int OPAQUE = 255;
    private static final int GRIP = 4;
    private static final int LEAST_TEXT_WIDTH = 24;

    private final GC gc;
    private final ScheduleLanes lanes;
    private final Rectangle plot;
    private final ChartLook look;
    private final Tones tones;

    /**
     * What is pointed out.
     *
     * @param selected the chosen step
     * @param grip the step whose rest is under the pointer or dragged
     * @param moved the step that is dragged
     * @param caretX where the dragged step would come
     * @param cursorX where the chart's crosshair is
     */
    record Pointing(
            Optional<String> selected,
            Optional<String> grip,
            Optional<String> moved,
            OptionalInt caretX,
            OptionalInt cursorX) {}

    SchedulePainter(GC gc, ScheduleLanes lanes, ChartLook look, Tones tones) {
        this.gc = gc;
        this.lanes = lanes;
        this.look = look;
        this.tones = tones;
        plot = lanes.area().bounds();
        gc.setAntialias(SWT.ON);
        gc.setTextAntialias(SWT.ON);
    }

    static Color colour(int rgb) {
        return new Color(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF);
    }

    void paint(Pointing pointing) {
        captions();
        gc.setClipping(plot.x, 0, plot.width, lanes.heights().all());
        int bottom = lanes.heights().gripsTop();
        gc.setForeground(colour(look.axisLine()));
        gc.drawLine(plot.x, bottom, plot.x + plot.width, bottom);
        lanes.groups().forEach(this::group);
        for (ScheduleSlot slot : lanes.slots()) {
            change(slot);
            rest(slot);
            step(slot, pointing);
            if (slot.movable()) {
                grip(slot, pointing.grip().equals(Optional.of(slot.id())), pointing.selected());
            }
        }
        pointing.cursorX().ifPresent(x -> {
            gc.setForeground(colour(look.mutedInk()));
            gc.drawLine(x, 0, x, lanes.heights().all());
        });
        pointing.caretX().ifPresent(this::caret);
        gc.setClipping((Rectangle) null);
    }

    private void captions() {
        caption(
                TEXTS.text("schedule.steps"),
                lanes.heights().groups(),
                lanes.heights().steps());
        caption(
                TEXTS.text("schedule.rests"),
                lanes.heights().gripsTop(),
                lanes.heights().grips());
    }

    private void caption(String text, int top, int height) {
        Point size = gc.textExtent(text);
        int left = plot.x - Spacing.GAP - size.x;
        if (left >= 0) {
            gc.setForeground(colour(look.mutedInk()));
            gc.drawText(text, left, top + (height - size.y) / 2, true);
        }
    }

    private void group(ScheduleLanes.Group group) {
        if (group.right() < plot.x || group.left() > plot.x + plot.width) {
            return;
        }
        int bottom = lanes.heights().groups() - 2;
        gc.setForeground(colour(look.zeroLine()));
        gc.drawLine(group.left(), bottom, group.right(), bottom);
        gc.drawLine(group.left(), bottom - 3, group.left(), bottom);
        gc.drawLine(group.right(), bottom - 3, group.right(), bottom);
        String words = group.name();
        int space = words.indexOf(' ');
        for (String text : new String[] {words, words.substring(space + 1)}) {
            int width = gc.textExtent(text).x;
            if (width + 2 * Spacing.TIGHT <= group.roomRight() - group.roomLeft()) {
                int centre = (Math.max(plot.x, group.left()) + Math.min(plot.x + plot.width, group.right())) / 2;
                int least = group.roomLeft() + Spacing.TIGHT;
                int most = group.roomRight() - Spacing.TIGHT - width;
                gc.setForeground(colour(look.ink()));
                gc.drawText(text, Math.max(least, Math.min(most, centre - width / 2)), 0, true);
                return;
            }
        }
    }

    private void change(ScheduleSlot slot) {
        Rectangle box = lanes.between(slot.changeStartSeconds(), slot.restStartSeconds(), CHANGE_SHARE);
        if (box.width > 0) {
            gc.setBackground(colour(look.grid()));
            gc.fillRectangle(box);
        }
    }

    private void rest(ScheduleSlot slot) {
        Rectangle box = lanes.between(slot.restStartSeconds(), slot.startSeconds(), REST_SHARE);
        if (box.width > 0) {
            hatch(box, tones.warning(), HATCH);
            gc.setForeground(tones.warning());
            gc.drawRectangle(box.x, box.y, box.width, box.height);
        }
    }

    private void hatch(Rectangle box, Color colour, int distance) {
        Rectangle before = gc.getClipping();
        gc.setClipping(box.intersection(before));
        gc.setForeground(colour);
        for (int x = box.x - box.height; x < box.x + box.width; x += distance) {
            gc.drawLine(x, box.y + box.height, x + box.height, box.y);
        }
        gc.setClipping(before);
    }

    private void step(ScheduleSlot slot, Pointing pointing) {
        Rectangle bar = lanes.bar(slot);
        Color tone = slot.fill() == ScheduleSlot.Fill.HOLLOW ? colour(look.mutedInk()) : tones.accent();
        boolean moved = pointing.moved().equals(Optional.of(slot.id()));
        gc.setAlpha(moved ? FAINT : OPAQUE);
        gc.setBackground(tone);
        fill(slot, bar);
        gc.setAlpha(OPAQUE);
        gc.setForeground(tone);
        gc.drawRectangle(bar.x, bar.y, bar.width - 1, bar.height - 1);
        text(slot, bar);
        if (pointing.selected().equals(Optional.of(slot.id()))) {
            gc.setForeground(colour(look.ink()));
            gc.setLineWidth(2);
            gc.drawRectangle(bar.x - 3, bar.y - 2, bar.width + 5, bar.height + 3);
            gc.setLineWidth(1);
        }
    }

    private void fill(ScheduleSlot slot, Rectangle bar) {
        Color ground = colour(look.background());
        switch (slot.fill()) {
            case PLAIN -> gc.fillRectangle(bar);
            case HATCHED -> {
                gc.fillRectangle(bar);
                hatch(bar, ground, HATCH);
            }
            case STRIPED -> {
                gc.fillRectangle(bar);
                gc.setForeground(ground);
                for (int x = bar.x + 2; x < bar.x + bar.width - 1; x += STRIPE) {
                    gc.drawLine(x, bar.y, x, bar.y + bar.height);
                }
            }
            case BARRED -> {
                gc.fillRectangle(bar);
                gc.setBackground(ground);
                gc.fillRectangle(bar.x, bar.y + bar.height / 2 - 1, bar.width, 2);
            }
            case HOLLOW -> {
                gc.setAlpha(FAINT / 2);
                gc.fillRectangle(bar);
            }
        }
    }

    private void text(ScheduleSlot slot, Rectangle whole) {
        Rectangle bar = whole.intersection(
                new Rectangle(plot.x, 0, plot.width, lanes.heights().all()));
        if (bar.width < LEAST_TEXT_WIDTH) {
            return;
        }
        Point size = gc.textExtent(slot.id());
        if (size.x + 2 * Spacing.TIGHT <= bar.width && size.y <= bar.height) {
            int left = bar.x + (bar.width - size.x) / 2;
            int top = bar.y + (bar.height - size.y) / 2;
            gc.setBackground(colour(look.background()));
            gc.fillRoundRectangle(left - Spacing.TIGHT, top, size.x + 2 * Spacing.TIGHT, size.y, 4, 4);
            gc.setForeground(colour(look.ink()));
            gc.drawText(slot.id(), left, top, true);
        }
    }

    private void grip(ScheduleSlot slot, boolean hot, Optional<String> selected) {
        int x = (int) Math.round(lanes.toX(slot.startSeconds()));
        int top = lanes.heights().gripsTop() + 2;
        boolean strong = hot || selected.equals(Optional.of(slot.id()));
        int size = strong ? GRIP + 1 : GRIP - 1;
        gc.setBackground(strong ? tones.accent() : colour(look.mutedInk()));
        gc.fillPolygon(new int[] {x - size, top + 2 * size, x + size, top + 2 * size, x, top});
    }

    private void caret(int x) {
        gc.setBackground(tones.accent());
        gc.fillRectangle(x - 1, 0, 3, lanes.heights().gripsTop());
    }
}
