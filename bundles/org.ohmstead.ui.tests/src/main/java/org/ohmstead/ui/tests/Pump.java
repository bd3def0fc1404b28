// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import java.util.Arrays;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.widgets.Display;

/** Handles the user interface's events while a test waits for something. */
final class Pump {
    private static final long LONGEST_NANOSECONDS = 60_000_000_000L;
    private static final long LONGEST_SETTLING_NANOSECONDS = 20_000_000_000L;
    private static final int QUIET_ROUNDS = 4;
    private static final int MOST_EVENTS = 500;
    private static final int WAKE_MILLISECONDS = 20;

    private final Display display;
    private final StallWatch stalls;

    Pump(Display display) {
        this.display = display;
        this.stalls = new StallWatch(display.getThread());
    }

    StallWatch stalls() {
        return stalls;
    }

    /** Handles events until a condition holds; fails with a sentence when it does not come true. */
    void until(BooleanSupplier condition, Supplier<String> sentence) {
        long end = System.nanoTime() + LONGEST_NANOSECONDS;
        while (!condition.getAsBoolean()) {
            if (System.nanoTime() - end > 0) {
                throw new AssertionError("It did not happen within a minute: " + sentence.get());
            }
            handleOrSleep();
        }
    }

    void until(BooleanSupplier condition, String sentence) {
        until(condition, () -> sentence);
    }

    /** Handles events until no job of ours runs or waits, for a few rounds in a row. */
    void settle() {
        int quiet = 0;
        long end = System.nanoTime() + LONGEST_SETTLING_NANOSECONDS;
        while (quiet < QUIET_ROUNDS && System.nanoTime() - end < 0) {
            for (int events = 0; events < MOST_EVENTS && handle(); events++) {
                Thread.onSpinWait();
            }
            quiet = ourJobs() ? 0 : quiet + 1;
            display.timerExec(WAKE_MILLISECONDS, () -> {});
            display.sleep();
        }
    }

    private static boolean ourJobs() {
        return Arrays.stream(Job.getJobManager().find(null))
                .filter(job -> job.getClass().getName().startsWith("org.ohmstead."))
                .anyMatch(job -> job.getState() == Job.RUNNING || job.getState() == Job.WAITING);
    }

    private void handleOrSleep() {
        if (!handle()) {
            display.timerExec(WAKE_MILLISECONDS, () -> {});
            display.sleep();
        }
    }

    private boolean handle() {
        stalls.begin();
        try {
            return display.readAndDispatch();
        } finally {
            stalls.end();
        }
    }
}
