// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/**
 * Measures how long code of ours keeps the thread at a time. It counts processor time, which is the same however busy the machine is, and
 * of a step of the event loop only the share in which samples of the stack saw code of ours: the toolkit's painting is not ours.
 */
final class StepWatch implements AutoCloseable {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final long SAMPLE_NANOS = 2_000_000;
    private static final Set<String> OF_THE_TEST = Set.of("Bench", "StepWatch", "BigLogTest");

    private final Thread watched = Thread.currentThread();
    private final AtomicInteger samples = new AtomicInteger();
    private final AtomicInteger ours = new AtomicInteger();
    private volatile boolean closed;
    private double longestMilliseconds;

    StepWatch() {
        Thread sampler = new Thread(this::sample, "step watch");
        sampler.setDaemon(true);
        sampler.start();
    }

    private void sample() {
        while (!closed) {
            LockSupport.parkNanos(SAMPLE_NANOS);
            boolean seen = false;
            for (StackTraceElement frame : watched.getStackTrace()) {
                String name = frame.getClassName();
                String simple = name.substring(name.lastIndexOf('.') + 1).replaceAll("\\$.*", "");
                seen |= name.startsWith("org.ohmstead.") && !OF_THE_TEST.contains(simple);
            }
            samples.incrementAndGet();
            if (seen) {
                ours.incrementAndGet();
            }
        }
    }

    /** Does a step and measures it. */
    boolean step(BooleanSupplier action) {
        samples.set(0);
        ours.set(0);
        long before = THREADS.getCurrentThreadCpuTime();
        boolean result = action.getAsBoolean();
        double milliseconds = (THREADS.getCurrentThreadCpuTime() - before) / 1e6;
        int seen = samples.get();
        longestMilliseconds =
                Math.max(longestMilliseconds, seen == 0 ? milliseconds : milliseconds * ours.get() / seen);
        return result;
    }

    /** Returns the longest step so far, and begins anew. */
    double longestMilliseconds() {
        double longest = longestMilliseconds;
        longestMilliseconds = 0;
        return longest;
    }

    @Override
    public void close() {
        closed = true;
    }
}
