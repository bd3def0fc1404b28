// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.LinkedHashSet;
import java.util.Set;
import org.ohmstead.workbench.look.Slices;

/** Parts that are to be shown anew: one in each turn of the event loop, and each once, however often it is asked for meanwhile. */
final class Refreshing {
    private final Slices slices;
    private final Set<Runnable> waiting = new LinkedHashSet<>();

    Refreshing(Slices slices) {
        this.slices = slices;
    }

    /** Asks for a part; equal parts are one. */
    void ask(Runnable part) {
        if (waiting.add(part)) {
            slices.add(() -> {
                waiting.remove(part);
                part.run();
            });
        }
    }

    /** Returns whether nothing is left to be shown. */
    boolean done() {
        return waiting.isEmpty() && slices.done();
    }
}
