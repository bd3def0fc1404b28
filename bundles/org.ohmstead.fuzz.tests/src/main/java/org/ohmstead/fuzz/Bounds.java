// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Optional;

/**
 * Time and memory that a reader may take for an input of some kilobytes. Both are those of the thread alone, so that a machine with other
 * work on it fails nothing.
 */
final class Bounds {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    /** Far above what any of them takes, as the code is instrumented and may not be compiled yet. */
    private static final long MOST_NANOS = 5_000_000_000L;

    private static final long MOST_BYTES = 64L << 20;

    private Bounds() {}

    /** Reads something; fails when it took more, and does so again. The first reading pays for loading the classes too. */
    static void hold(Runnable reading) {
        if (excess(reading).isPresent()) {
            excess(reading).ifPresent(excess -> {
                throw new AssertionError(excess);
            });
        }
    }

    private static Optional<String> excess(Runnable reading) {
        long nanos = THREADS.getCurrentThreadCpuTime();
        long bytes = THREADS.getCurrentThreadAllocatedBytes();
        reading.run();
        long tookNanos = THREADS.getCurrentThreadCpuTime() - nanos;
        long tookBytes = THREADS.getCurrentThreadAllocatedBytes() - bytes;
        return tookNanos <= MOST_NANOS && tookBytes <= MOST_BYTES
                ? Optional.empty()
                : Optional.of("it took " + tookNanos / 1e9 + " s of processor time and " + tookBytes + " bytes");
    }
}
