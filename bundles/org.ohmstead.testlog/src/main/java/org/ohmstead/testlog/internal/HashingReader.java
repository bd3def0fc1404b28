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
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicInteger;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * Has rows hashed on another thread while they are read, since hashing takes as long; when that falls behind, the reading thread helps.
 * Rows are handed over in their order, on the reading thread; {@link #finish} waits for the last.
 */
final class HashingReader implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(HashingReader.class);
    private static final int BATCH = HashLanes.LANES;

    /** Hashing side by side takes a while until it is fast, so that the first batches, which may be all, are hashed otherwise. */
    private static final long SLOW_BATCHES = 32;

    /** So many batches keep the other thread busy while this one hashes one itself. */
    private static final int ENOUGH_TO_DO = 3;

    private static final int MOST_WAITING = 8;

    /** Takes one row after the other, with whether its content gives its hash. */
    @FunctionalInterface
    interface Taker {
        void take(RawRow row, boolean hashFits);
    }

    /** Rows, and of each whether its content gives its hash. */
    private record Batch(List<RawRow> rows, FutureTask<boolean[]> fits) {}

    private final Taker taker;
    private final RowHash here = new RowHash();
    private final RowHash there = new RowHash();
    private final AtomicInteger toDo = new AtomicInteger();
    private final ExecutorService hashing = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "log verification");
        thread.setDaemon(true);
        return thread;
    });
    private final Deque<Batch> waiting = new ArrayDeque<>();
    private List<RawRow> rows = new ArrayList<>(BATCH);
    private long batches;
    private boolean stopped;

    HashingReader(Taker taker) {
        this.taker = taker;
    }

    /** Takes a row that was read. After an interruption nothing more is taken; {@link #finish} says so. */
    void read(RawRow row) {
        rows.add(row);
        if (rows.size() == BATCH) {
            hash();
            while (waiting.size() > MOST_WAITING
                    || !waiting.isEmpty() && waiting.peek().fits().isDone()) {
                take(waiting.poll());
            }
        }
    }

    private void hash() {
        List<RawRow> some = rows;
        rows = new ArrayList<>(BATCH);
        if (stopped) {
            return;
        }
        boolean elsewhere = toDo.get() < ENOUGH_TO_DO;
        RowHash hash = elsewhere ? there : here;
        boolean sideBySide = batches++ >= SLOW_BATCHES;
        FutureTask<boolean[]> fits = new FutureTask<>(() -> sideBySide ? hash.fitSideBySide(some) : hash.fit(some));
        waiting.add(new Batch(some, fits));
        if (elsewhere) {
            toDo.incrementAndGet();
            hashing.execute(() -> {
                fits.run();
                toDo.decrementAndGet();
            });
        } else {
            fits.run();
        }
    }

    private void take(Batch batch) {
        try {
            boolean[] fits = batch.fits().get();
            for (int at = 0; at < fits.length && !stopped; at++) {
                taker.take(batch.rows().get(at), fits[at]);
            }
        } catch (InterruptedException interruption) {
            stopped = true;
        } catch (ExecutionException fault) {
            throw new IllegalStateException("a row could not be checked", fault.getCause());
        }
    }

    /** Waits until all rows were taken. */
    void finish() throws TestLogException {
        hash();
        while (!waiting.isEmpty()) {
            take(waiting.poll());
        }
        if (stopped) {
            Thread.currentThread().interrupt();
            throw new TestLogException(TEXTS.text("check.stopped"));
        }
    }

    /** Lets go of the other thread; rows that were read before something failed are taken still. */
    @Override
    public void close() {
        hashing.shutdown();
        while (!waiting.isEmpty()) {
            take(waiting.poll());
        }
    }
}
