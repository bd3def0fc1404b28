// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * Runs tasks on a few threads and hands out their results in the tasks' order. Only a few results are ahead of the one that is
 * handed out, so memory stays bounded however many tasks there are. Used by one thread.
 *
 * @param <T> what a task gives
 */
final class OrderedResults<T> implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(OrderedResults.class);

    private final ExecutorService threads;
    private final Iterator<Callable<T>> waiting;
    private final Deque<Future<T>> ahead = new ArrayDeque<>();

    /**
     * Starts the first tasks.
     *
     * @param workers number of threads, at least 1
     * @param tasks what to do
     */
    OrderedResults(int workers, List<Callable<T>> tasks) {
        AtomicInteger number = new AtomicInteger();
        threads = Executors.newFixedThreadPool(workers, task -> {
            Thread thread = new Thread(task, "ohmstead-step-" + number.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        });
        waiting = tasks.iterator();
        for (int i = 0; i < 2 * workers; i++) {
            startNext();
        }
    }

    private void startNext() {
        if (waiting.hasNext()) {
            ahead.add(threads.submit(waiting.next()));
        }
    }

    /**
     * Returns the result of the next task, once it is done.
     *
     * @throws TestLogException when the task failed with it
     * @throws CancellationException when the task, or the thread that waits for it, was stopped
     */
    T next() throws TestLogException {
        Future<T> head = ahead.remove();
        startNext();
        try {
            return head.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw stopped(e);
        } catch (ExecutionException e) {
            throw rethrown(e);
        }
    }

    private static CancellationException stopped(InterruptedException cause) {
        CancellationException stop = new CancellationException(TEXTS.text("job.interrupted"));
        stop.initCause(cause);
        return stop;
    }

    /** Throws what a task threw as if it had run on this thread. */
    private static IllegalStateException rethrown(ExecutionException wrapped) throws TestLogException {
        Throwable cause = wrapped.getCause();
        if (cause instanceof TestLogException failure) {
            throw failure;
        }
        if (cause instanceof RuntimeException failure) {
            throw failure;
        }
        if (cause instanceof Error failure) {
            throw failure;
        }
        return new IllegalStateException(cause);
    }

    /** Takes back the tasks that did not begin, and returns when those that did have ended, so that none writes afterwards. */
    @Override
    public void close() {
        ahead.forEach(task -> task.cancel(false));
        threads.shutdown();
        boolean interrupted = false;
        boolean ended = false;
        while (!ended) {
            try {
                ended = threads.awaitTermination(1, TimeUnit.MINUTES);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
