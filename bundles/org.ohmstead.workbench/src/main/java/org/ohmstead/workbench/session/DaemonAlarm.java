// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.time.Duration;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/** An alarm with one thread of its own, which does not keep the program alive. */
final class DaemonAlarm implements Alarm {
    private static final System.Logger LOGGER = System.getLogger(DaemonAlarm.class.getName());

    private final ScheduledThreadPoolExecutor executor;

    DaemonAlarm(String threadName) {
        executor = new ScheduledThreadPoolExecutor(1, task -> {
            Thread thread = new Thread(task, threadName);
            thread.setDaemon(true);
            return thread;
        });
        executor.setRemoveOnCancelPolicy(true);
    }

    @Override
    public Registration after(Duration delay, Runnable action) {
        return registration(executor.schedule(() -> reported(action), delay.toMillis(), TimeUnit.MILLISECONDS));
    }

    @Override
    public Registration every(Duration pause, Runnable action) {
        return registration(executor.scheduleWithFixedDelay(
                () -> reported(action), pause.toMillis(), pause.toMillis(), TimeUnit.MILLISECONDS));
    }

    private static Registration registration(Future<?> task) {
        return () -> task.cancel(false);
    }

    // A failure would otherwise end what repeats, unseen.
    private static void reported(Runnable action) {
        Guard.run(action)
                .ifPresent(
                        failure -> LOGGER.log(System.Logger.Level.ERROR, "Watching the open project failed.", failure));
    }

    @Override
    public void close() {
        executor.shutdown();
    }
}
