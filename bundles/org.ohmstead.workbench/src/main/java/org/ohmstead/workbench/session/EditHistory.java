// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/**
 * A value with the values it had before and after, as undo and redo walk through them.
 *
 * @param <T> an immutable value
 */
final class EditHistory<T> {
    private static final Messages TEXTS = Messages.of(EditHistory.class);
    private static final int LOST = -1;

    /** An edit, on the undo side with the value before it, on the redo side with the value after it. */
    private record Step<T>(String name, T value) {}

    private final int mostSteps;
    private final Duration mergeWithin;
    private final List<Step<T>> undo = new ArrayList<>();
    private final List<Step<T>> redo = new ArrayList<>();
    private T current;
    private Optional<String> mergeKey = Optional.empty();
    private Instant mergeUntil = Instant.MIN;
    private int savedDepth;

    EditHistory(T first, int mostSteps, Duration mergeWithin) {
        this.current = first;
        this.mostSteps = mostSteps;
        this.mergeWithin = mergeWithin;
    }

    T current() {
        return current;
    }

    /** Forgets all steps; the value counts as saved. */
    void reset(T value) {
        undo.clear();
        redo.clear();
        current = value;
        markSaved();
    }

    /** Makes another value the current one; with the key of the step before it and soon after it, both become one step. */
    void edit(String name, T after, Optional<String> key, Instant now) {
        boolean merges = key.isPresent() && key.equals(mergeKey) && isSoon(now);
        redo.clear();
        if (savedDepth > undo.size()) {
            savedDepth = LOST;
        }
        if (!merges) {
            undo.add(new Step<>(name, current));
            if (undo.size() > mostSteps) {
                undo.remove(0);
                savedDepth = Math.max(LOST, savedDepth - 1);
            }
        }
        current = after;
        mergeKey = key;
        mergeUntil = key.isPresent() ? now.plus(mergeWithin) : Instant.MIN;
        if (merges && undo.get(undo.size() - 1).value().equals(after)) {
            undo.remove(undo.size() - 1);
            stopMerging();
        }
    }

    /** Returns whether it is still soon after the last step; before it nothing can be, unless the clock was set back. */
    private boolean isSoon(Instant now) {
        return !now.isAfter(mergeUntil) && !now.isBefore(mergeUntil.minus(mergeWithin));
    }

    /** Sees to it that the next edit is a step of its own. */
    void stopMerging() {
        mergeKey = Optional.empty();
    }

    Optional<String> undoName() {
        return nameOfLast(undo);
    }

    Optional<String> redoName() {
        return nameOfLast(redo);
    }

    private static <T> Optional<String> nameOfLast(List<Step<T>> steps) {
        return steps.isEmpty()
                ? Optional.empty()
                : Optional.of(steps.get(steps.size() - 1).name());
    }

    /** Goes one step back; returns whether there was one. */
    boolean undo() {
        return move(undo, redo);
    }

    /** Goes one undone step forward; returns whether there was one. */
    boolean redo() {
        return move(redo, undo);
    }

    private boolean move(List<Step<T>> from, List<Step<T>> to) {
        stopMerging();
        if (from.isEmpty()) {
            return false;
        }
        Step<T> step = from.remove(from.size() - 1);
        to.add(new Step<>(step.name(), current));
        current = step.value();
        return true;
    }

    /** Says that the current value is the saved one. */
    void markSaved() {
        stopMerging();
        savedDepth = undo.size();
    }

    /** Says that no value of the history is known to be the saved one. */
    void forgetSaved() {
        stopMerging();
        savedDepth = LOST;
    }

    /** Returns the names of the steps between the saved value and the current one, in the order they were made. */
    List<String> namesSinceSaved() {
        if (savedDepth <= undo.size()) {
            return undo.subList(Math.max(0, savedDepth), undo.size()).stream()
                    .map(Step::name)
                    .toList();
        }
        List<String> undone = new ArrayList<>();
        for (Step<T> step : redo.subList(redo.size() - (savedDepth - undo.size()), redo.size())) {
            undone.add(TEXTS.text("edit.undone", step.name()));
        }
        return List.copyOf(undone);
    }
}
