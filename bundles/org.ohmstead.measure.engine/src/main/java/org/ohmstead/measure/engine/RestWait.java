// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.ohmstead.measure.DriverInfo;

/** Waits while the amplifier rests, and can be told at any time to wait no longer. */
final class RestWait {
    private static final long TELL_NANOS = TimeUnit.SECONDS.toNanos(1);

    private final Rests rests;
    private final Catalog catalog;
    private final Runner runner;
    private volatile Optional<CountDownLatch> waiting = Optional.empty();

    RestWait(Rests rests, Catalog catalog, Runner runner) {
        this.rests = rests;
        this.catalog = catalog;
        this.runner = runner;
    }

    /** Returns how long to rest before an item; zero on a bench at which nothing gets warm. */
    Duration due(PlanItem item, PlanState state) {
        boolean real = catalog.driver(runner.bench().driverId())
                .filter(driver -> driver.info().kind() == DriverInfo.Kind.REAL)
                .isPresent();
        Duration rest = real && !state.halted() ? rests.before(item, state) : Duration.ZERO;
        return rest.isNegative() ? Duration.ZERO : rest;
    }

    /**
     * Waits.
     *
     * @param rest how long, above 0
     * @param over whether it need not wait any more; looked at after each {@link #end}
     * @param left hears about once a second how long it still takes, and zero at the end
     */
    void await(Duration rest, BooleanSupplier over, Consumer<Duration> left) throws InterruptedException {
        CountDownLatch latch = new CountDownLatch(1);
        waiting = Optional.of(latch);
        long end = System.nanoTime() + rest.toNanos();
        long leftNanos = rest.toNanos();
        try {
            while (leftNanos > 0 && !over.getAsBoolean()) {
                left.accept(Duration.ofNanos(leftNanos));
                boolean told = latch.await(Math.min(leftNanos, TELL_NANOS), TimeUnit.NANOSECONDS);
                leftNanos = told ? 0 : end - System.nanoTime();
            }
        } finally {
            waiting = Optional.empty();
            left.accept(Duration.ZERO);
        }
    }

    /** Ends the waiting at once; does nothing when nobody waits. */
    void end() {
        waiting.ifPresent(CountDownLatch::countDown);
    }
}
