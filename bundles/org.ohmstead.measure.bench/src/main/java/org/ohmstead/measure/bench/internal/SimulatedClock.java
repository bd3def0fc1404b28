// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.time.Instant;
import org.ohmstead.measure.bench.BenchClock;

/** A clock that only moves when it is told to, and then at once. */
public final class SimulatedClock implements BenchClock {
    private Instant now;

    /** Makes a clock that stands at a moment. */
    public SimulatedClock(Instant start) {
        this.now = start;
    }

    @Override
    public Instant now() {
        return now;
    }

    @Override
    public void pass(double seconds) throws InterruptedException {
        if (Thread.interrupted()) {
            throw new InterruptedException("The bench was interrupted.");
        }
        now = now.plusNanos(Math.round(seconds * 1e9));
    }
}
