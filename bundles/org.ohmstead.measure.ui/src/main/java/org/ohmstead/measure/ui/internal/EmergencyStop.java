// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.ohmstead.units.text.Messages;

/**
 * Makes the bench safe at once, on a thread of its own that waits for nothing else. Each press gets such a thread, so that one that hangs
 * keeps no other from it.
 */
final class EmergencyStop implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(EmergencyStop.class);

    private final AtomicReference<Optional<OpenRun>> target = new AtomicReference<>(Optional.empty());
    private final Clock clock;
    private final ExecutorService threads = Executors.newCachedThreadPool(work -> {
        Thread thread = new Thread(work, "ohmstead emergency stop");
        thread.setDaemon(true);
        thread.setPriority(Thread.MAX_PRIORITY);
        return thread;
    });

    /**
     * What a press did.
     *
     * @param at when
     * @param who pressed; may be empty
     * @param answered whether the bench has answered already
     * @param wrong what went wrong, whole sentences
     */
    record Report(Instant at, String who, boolean answered, List<String> wrong) {
        Report {
            wrong = List.copyOf(wrong);
        }

        /** Returns what was done and what went wrong, whole sentences. */
        List<String> sentences() {
            List<String> all = new ArrayList<>();
            all.add(who.isBlank() ? TEXTS.text("stop.pressed") : TEXTS.text("stop.pressedBy", who));
            if (!answered) {
                all.add(TEXTS.text("stop.telling"));
            } else if (wrong.isEmpty()) {
                all.add(TEXTS.text("stop.safe"));
            } else {
                all.addAll(wrong);
                all.add(TEXTS.text("stop.byHand"));
            }
            return List.copyOf(all);
        }
    }

    EmergencyStop(Clock clock) {
        this.clock = clock;
    }

    /** Says what would be stopped from now on. Any thread. */
    void aim(Optional<OpenRun> open) {
        target.set(open);
    }

    /**
     * Presses it. Any thread; returns at once.
     *
     * @param who presses it; may be empty
     * @param told hears at once that it was pressed, and on another thread what came of it
     * @return whether there is anything to stop
     */
    boolean press(String who, Consumer<Report> told) {
        Optional<OpenRun> open = target.get();
        if (open.isEmpty()) {
            return false;
        }
        Instant at = clock.instant();
        threads.execute(() -> {
            List<String> wrong = open.get().run().emergencyStop(who);
            told.accept(new Report(at, who, true, wrong));
        });
        told.accept(new Report(at, who, false, List.of()));
        return true;
    }

    @Override
    public void close() {
        threads.shutdown();
    }
}
