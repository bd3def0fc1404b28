// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.ohmstead.measure.engine.PlanRun;

/** Makes the bench safe when the process is told to end while something may be fed, and gives the run the time to note it in the log. */
final class EmergencyHook implements AutoCloseable {
    private static final long MOST_SECONDS = 15;

    private final CountDownLatch over = new CountDownLatch(1);
    private final Thread hook;

    /**
     * Is ready from now on until it is closed.
     *
     * @param run what is carried out
     * @param who runs it
     * @param console hears what went wrong
     */
    EmergencyHook(PlanRun run, String who, Console console) {
        hook = new Thread(() -> stop(run, who, console), "ohmstead emergency stop");
        Runtime.getRuntime().addShutdownHook(hook);
    }

    private void stop(PlanRun run, String who, Console console) {
        run.emergencyStop(who + ", by ending the program").forEach(console::message);
        try {
            if (!over.await(MOST_SECONDS, TimeUnit.SECONDS)) {
                console.message(Texts.of("emergency.late"));
            }
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        over.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException ending) {
            // The process ends already, by way of the hook.
            System.getLogger(EmergencyHook.class.getName())
                    .log(System.Logger.Level.DEBUG, "the run was ended from outside", ending);
        }
    }
}
