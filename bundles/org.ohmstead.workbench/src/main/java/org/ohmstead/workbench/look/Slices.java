// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import java.util.ArrayDeque;
import java.util.Deque;
import org.eclipse.swt.widgets.Control;

/**
 * Work of the user interface's thread that is done piece by piece, one in each turn of the event loop, so that keys and the mouse never
 * wait for all of it. It ends with the control that it is done for. User interface thread only.
 */
public final class Slices {
    private final Control owner;
    private final Deque<Runnable> waiting = new ArrayDeque<>();
    private boolean asked;

    /**
     * Has nothing to do yet.
     *
     * @param owner when it is disposed, what is left is not done
     */
    public Slices(Control owner) {
        this.owner = owner;
    }

    /** Has a piece done after those that wait already, never within this call. */
    public void add(Runnable slice) {
        waiting.add(slice);
        ask();
    }

    /** Forgets what has not been done. */
    public void clear() {
        waiting.clear();
    }

    /** Returns whether nothing is left to do. */
    public boolean done() {
        return waiting.isEmpty();
    }

    private void ask() {
        if (!asked && !owner.isDisposed()) {
            asked = true;
            owner.getDisplay().asyncExec(this::next);
        }
    }

    private void next() {
        asked = false;
        if (owner.isDisposed()) {
            waiting.clear();
        }
        Runnable slice = waiting.poll();
        if (slice == null) {
            return;
        }
        try {
            slice.run();
        } finally {
            if (!waiting.isEmpty()) {
                ask();
            }
        }
    }
}
