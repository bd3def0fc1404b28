// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/**
 * The listeners of a desk. Events that a listener causes are told after the one at hand, so that all hear them in the same order; a
 * listener that fails is reported, and the others hear the event all the same.
 */
final class DeskListeners {
    private final List<DeskListener> listeners = new CopyOnWriteArrayList<>();
    private final Queue<Consumer<DeskListener>> waiting = new ArrayDeque<>();
    private final Consumer<Throwable> faults;
    private boolean telling;

    DeskListeners(Consumer<Throwable> faults) {
        this.faults = faults;
    }

    Registration add(DeskListener listener) {
        // Wrapped, so that a listener added twice is taken away one at a time.
        listeners.add(listener);
        boolean[] added = {true};
        return () -> {
            if (added[0]) {
                added[0] = false;
                listeners.remove(listener);
            }
        };
    }

    void tell(Consumer<DeskListener> event) {
        waiting.add(event);
        if (telling) {
            return;
        }
        telling = true;
        try {
            for (Consumer<DeskListener> next = waiting.poll(); next != null; next = waiting.poll()) {
                tellAll(next);
            }
        } finally {
            telling = false;
        }
    }

    private void tellAll(Consumer<DeskListener> event) {
        for (DeskListener listener : listeners) {
            Optional<Throwable> failure = Guard.run(() -> event.accept(listener));
            failure.ifPresent(faults);
        }
    }
}
