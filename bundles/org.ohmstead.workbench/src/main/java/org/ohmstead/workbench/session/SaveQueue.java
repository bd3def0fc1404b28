// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.ArrayDeque;
import java.util.Optional;
import java.util.Queue;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.ohmstead.units.text.Messages;

/** Saves of the open project, one after the other. User interface's thread only. */
final class SaveQueue {
    private static final Messages TEXTS = Messages.of(SaveQueue.class);

    private record Saving(Runnable done, Consumer<Exception> failed) {}

    private final OffThread offThread;
    private final Supplier<Optional<ProjectSession>> session;
    private final Queue<Saving> waiting = new ArrayDeque<>();
    private boolean saving;

    SaveQueue(OffThread offThread, Supplier<Optional<ProjectSession>> session) {
        this.offThread = offThread;
        this.session = session;
    }

    boolean saving() {
        return saving;
    }

    void save(Runnable done, Consumer<Exception> failed) {
        waiting.add(new Saving(done, failed));
        if (!saving) {
            next();
        }
    }

    private void next() {
        Saving next = waiting.poll();
        if (next == null) {
            return;
        }
        try {
            begin(next);
        } catch (SessionException refused) {
            next.failed().accept(refused);
            next();
        }
    }

    private void begin(Saving next) throws SessionException {
        ProjectSession open = session.get().orElseThrow(() -> new SessionException(TEXTS.text("save.none")));
        SaveOrder order = open.beginSave();
        saving = true;
        offThread.run(
                order::carryOut,
                done -> {
                    saving = false;
                    if (session.get().filter(open::equals).isPresent()) {
                        open.endSave(done);
                    }
                    next.done().run();
                    next();
                },
                failure -> {
                    saving = false;
                    next.failed().accept(failure);
                    next();
                });
    }
}
