// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** A call of a plug-in on a thread of its own, which is waited for no longer than is said. Knows the threads that it left behind. */
public final class Call<T> {
    private static final Duration GRACE = Duration.ofMillis(500);
    private static final int MOST_THREADS = 100;

    private final ThreadGroup group = new ThreadGroup("contract test");
    private final FutureTask<T> task;
    private final Thread thread;

    private Call(Callable<T> work) {
        task = new FutureTask<>(work);
        thread = new Thread(group, task, "contract test");
        thread.setDaemon(true);
    }

    public static <T> Call<T> start(Callable<T> work) {
        Call<T> call = new Call<>(work);
        call.thread.start();
        return call;
    }

    public static <T> Ended<T> of(Duration limit, Callable<T> work) throws InterruptedException {
        Call<T> call = start(work);
        Ended<T> ended = call.await(limit);
        if (!ended.inTime()) {
            call.interrupt();
        }
        return ended;
    }

    public void interrupt() {
        thread.interrupt();
    }

    public Ended<T> await(Duration limit) throws InterruptedException {
        try {
            return new Ended<>(
                    true, Optional.ofNullable(task.get(limit.toNanos(), TimeUnit.NANOSECONDS)), Optional.empty());
        } catch (TimeoutException late) {
            return new Ended<>(false, Optional.empty(), Optional.empty());
        } catch (ExecutionException threw) {
            return new Ended<>(true, Optional.empty(), Optional.of(threw.getCause()));
        }
    }

    /** Returns the names of the threads that are still there a moment after the end, and interrupts them. */
    public List<String> threadsLeft() throws InterruptedException {
        long end = System.nanoTime() + GRACE.toNanos();
        List<String> names = new ArrayList<>();
        for (Thread each : threads()) {
            each.join(Math.max(1, TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime())));
            if (each.isAlive()) {
                names.add(each.getName());
                each.interrupt();
            }
        }
        return names;
    }

    private List<Thread> threads() {
        Thread[] room = new Thread[MOST_THREADS];
        int count = group.enumerate(room);
        return new ArrayList<>(Arrays.asList(room).subList(0, count));
    }
}
