// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.graphics.Rectangle;
import org.ohmstead.plot.ui.ChartArea;

/**
 * Where the steps of a schedule lie on the strip below the chart, in points.
 *
 * @param slots the steps in their order
 * @param area where the chart's axes are
 * @param heights of the lanes
 */
record ScheduleLanes(List<ScheduleSlot> slots, ChartArea area, Heights heights) {
    private static final double MINUTE = 60;
    private static final int LEAST_WIDTH = 3;
    private static final int REACH = 6;
    private static final double LEAST_SHARE = 0.45;

    ScheduleLanes {
        slots = List.copyOf(slots);
    }

    /**
     * The lanes, one below the other.
     *
     * @param groups height of the lane with the names of groups
     * @param steps height of the lane with the steps
     * @param grips height of the lane with the ends of rests
     */
    record Heights(int groups, int steps, int grips) {
        int gripsTop() {
            return groups + steps;
        }

        int all() {
            return groups + steps + grips;
        }
    }

    /**
     * Neighbours that have mode, load and kind of signal in common.
     *
     * @param name what they have in common
     * @param left where the first begins
     * @param right where the last ends
     * @param roomLeft how far its name may reach to the left
     * @param roomRight how far it may reach to the right
     */
    record Group(String name, int left, int right, int roomLeft, int roomRight) {
        Group upTo(int newRight) {
            return new Group(name, left, newRight, roomLeft, roomRight);
        }

        Group withRoom(int newRoomLeft, int newRoomRight) {
            return new Group(name, left, right, newRoomLeft, newRoomRight);
        }
    }

    double toX(double seconds) {
        return area.x().toPosition(seconds / MINUTE);
    }

    double toSeconds(int x) {
        return area.x().toValue(x) * MINUTE;
    }

    /** Returns the bar of a step: the higher, the more heat it makes in the amplifier. */
    Rectangle bar(ScheduleSlot slot) {
        int left = (int) Math.round(toX(slot.startSeconds()));
        int width = Math.max(LEAST_WIDTH, (int) Math.round(toX(slot.endSeconds())) - left);
        int height = (int) Math.round(heights.steps() * (LEAST_SHARE + (1 - LEAST_SHARE) * slot.heatRatio()));
        return new Rectangle(left, heights.gripsTop() - height, width, height);
    }

    /** Returns where between two moments something lies within the lane of the steps. */
    Rectangle between(double fromSeconds, double toSeconds, double share) {
        int left = (int) Math.round(toX(fromSeconds));
        int height = (int) Math.round(heights.steps() * share);
        return new Rectangle(left, heights.gripsTop() - height, (int) Math.round(toX(toSeconds)) - left, height);
    }

    /** Returns the groups in their order; the name of each may reach half way to its neighbours. */
    List<Group> groups() {
        List<Group> groups = new ArrayList<>();
        for (ScheduleSlot slot : slots) {
            int right = bar(slot).x + bar(slot).width;
            Group last = groups.isEmpty() ? null : groups.get(groups.size() - 1);
            if (last != null && last.name().equals(slot.group())) {
                groups.set(groups.size() - 1, last.upTo(right));
            } else {
                groups.add(new Group(slot.group(), bar(slot).x, right, 0, 0));
            }
        }
        int edge = area.bounds().x + area.bounds().width;
        for (int i = 0; i < groups.size(); i++) {
            int left = i == 0
                    ? area.bounds().x
                    : (groups.get(i - 1).right() + groups.get(i).left()) / 2;
            int right = i == groups.size() - 1
                    ? edge
                    : (groups.get(i).right() + groups.get(i + 1).left()) / 2;
            groups.set(i, groups.get(i).withRoom(Math.max(area.bounds().x, left), Math.min(edge, right)));
        }
        return groups;
    }

    /** Returns the step whose bar is at a place, or the nearest one within a few points. */
    Optional<ScheduleSlot> stepAt(int x, int y) {
        if (y < 0 || y >= heights.gripsTop()) {
            return Optional.empty();
        }
        double best = REACH;
        Optional<ScheduleSlot> found = Optional.empty();
        for (ScheduleSlot slot : slots) {
            Rectangle bar = bar(slot);
            double distance = Math.max(0, Math.max(bar.x - x, x - bar.x - bar.width));
            if (distance < best) {
                best = distance;
                found = Optional.of(slot);
            }
        }
        return found;
    }

    /** Returns the step whose rest ends at a place in the lane of the grips. */
    Optional<ScheduleSlot> gripAt(int x, int y) {
        if (y < heights.gripsTop() || y > heights.all()) {
            return Optional.empty();
        }
        double best = REACH + 1;
        Optional<ScheduleSlot> found = Optional.empty();
        for (ScheduleSlot slot : slots) {
            double distance = Math.abs(toX(slot.startSeconds()) - x);
            if (slot.movable() && distance < best) {
                best = distance;
                found = Optional.of(slot);
            }
        }
        return found;
    }

    /** Returns the step before which another one comes when it is dropped at a place; empty text for the end. */
    String beforeAt(int x, String draggedId) {
        double seconds = toSeconds(x);
        return slots.stream()
                .filter(slot -> slot.movable() && !slot.id().equals(draggedId) && slot.middleSeconds() > seconds)
                .findFirst()
                .map(ScheduleSlot::id)
                .orElse("");
    }

    /** Returns the step with an id. */
    Optional<ScheduleSlot> slot(String id) {
        return slots.stream().filter(slot -> slot.id().equals(id)).findFirst();
    }
}
