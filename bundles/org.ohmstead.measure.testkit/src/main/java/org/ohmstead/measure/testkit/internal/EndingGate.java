// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** Tells a measurement to end at a certain call, and at every one after it, as the engine does. */
public final class EndingGate implements Gate {
    private final long passes;
    private long passed;
    private final CountDownLatch told = new CountDownLatch(1);

    /** Lets so many calls pass. */
    public EndingGate(long passes) {
        this.passes = passes;
    }

    /** Lets nothing pass any more. */
    public void tell() {
        told.countDown();
    }

    /** Waits until it tells; returns whether it did. */
    public boolean awaitTold(Duration limit) throws InterruptedException {
        return told.await(limit.toNanos(), TimeUnit.NANOSECONDS);
    }

    public synchronized long passed() {
        return passed;
    }

    @Override
    public synchronized void pass() throws InterruptedException {
        if (told.getCount() == 0 || passed >= passes) {
            told.countDown();
            throw new InterruptedException("The measurement was told to end.");
        }
        passed++;
    }
}
