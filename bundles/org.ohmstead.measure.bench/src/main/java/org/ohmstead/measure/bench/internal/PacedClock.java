// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.time.Instant;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.ohmstead.measure.bench.BenchClock;

/** A clock whose time passes as fast as real time. */
public final class PacedClock implements BenchClock {
    private final BenchClock counted;
    private final CountDownLatch never = new CountDownLatch(1);

    /** Makes a clock that begins at a moment. */
    public PacedClock(Instant start) {
        this.counted = new SimulatedClock(start);
    }

    @Override
    public Instant now() {
        return counted.now();
    }

    @Override
    public void pass(double seconds) throws InterruptedException {
        // Nobody counts the latch down: the wait ends with the time or an interrupt.
        if (never.await(Math.round(seconds * 1e9), TimeUnit.NANOSECONDS)) {
            throw new IllegalStateException("never was counted down");
        }
        counted.pass(seconds);
    }
}
