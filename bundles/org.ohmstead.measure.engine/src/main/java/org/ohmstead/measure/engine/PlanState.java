// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;
import java.util.Optional;

/**
 * How far a plan is.
 *
 * @param items what became of each, in order
 * @param halted whether the emergency stop is pressed
 */
public record PlanState(List<ItemState> items, boolean halted) {
    public PlanState {
        items = List.copyOf(items);
    }

    /** Returns the item that is being measured. */
    public Optional<ItemState> running() {
        return items.stream()
                .filter(each -> each.status() == ItemState.Status.RUNNING)
                .findFirst();
    }

    /** Returns the first item that is still to be done. */
    public Optional<ItemState> next() {
        return items.stream().filter(PlanState::isOpen).findFirst();
    }

    /** Returns whether nothing is left to be done. */
    public boolean complete() {
        return next().isEmpty() && running().isEmpty();
    }

    static boolean isOpen(ItemState each) {
        return each.status() == ItemState.Status.PENDING || each.status() == ItemState.Status.FAILED;
    }
}
