// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.ohmstead.testlog.TestLogException;

/**
 * Reads rows on one thread and hashes them on another, since the two take about the same time. Rows are handed over in their order, on the
 * other thread; {@link #finish} waits for the last.
 */
final class HashingReader implements AutoCloseable {
    private static final int BATCH = 256;
    private static final int MOST_WAITING = 4;

    /** Takes one row after the other, with whether its content gives its hash. */
    @FunctionalInterface
    interface Taker {
        void take(RawRow row, boolean hashFits);
    }

    private final Taker taker;
    private final RowHash hash = new RowHash();
    private final ExecutorService hashing = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "log verification");
        thread.setDaemon(true);
        return thread;
    });
    private final Deque<Future<?>> waiting = new ArrayDeque<>();
    private List<RawRow> batch = new ArrayList<>(BATCH);
    private boolean stopped;

    HashingReader(Taker taker) {
        this.taker = taker;
    }

    /** Takes a row that was read. After an interruption nothing more is taken; {@link #finish} says so. */
    void read(RawRow row) {
        batch.add(row);
        if (batch.size() == BATCH) {
            submit();
            if (waiting.size() > MOST_WAITING) {
                await(waiting.poll());
            }
        }
    }

    private void submit() {
        List<RawRow> rows = batch;
        batch = new ArrayList<>(BATCH);
        if (!stopped) {
            waiting.add(hashing.submit(() -> rows.forEach(row -> taker.take(row, hash.fits(row)))));
        }
    }

    /** Waits until all rows were taken. */
    void finish() throws TestLogException {
        submit();
        while (!waiting.isEmpty()) {
            await(waiting.poll());
        }
        if (stopped) {
            Thread.currentThread().interrupt();
            throw new TestLogException("The check of the log was stopped before its end. Verify the log again.");
        }
    }

    private void await(Future<?> work) {
        try {
            work.get();
        } catch (InterruptedException interruption) {
            stopped = true;
        } catch (ExecutionException fault) {
            throw new IllegalStateException("a row could not be checked", fault.getCause());
        }
    }

    /** Waits for what is under way, so that nobody takes a row any more afterwards. */
    @Override
    public void close() {
        hashing.shutdown();
        while (!waiting.isEmpty()) {
            await(waiting.poll());
        }
    }
}
