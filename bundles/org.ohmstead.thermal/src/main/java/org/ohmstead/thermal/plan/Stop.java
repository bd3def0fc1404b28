// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.time.Duration;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/** Says when the search has to end early, and why; and passes on how far it is. */
final class Stop implements BooleanSupplier {
    private final BooleanSupplier cancelled;
    private final DoubleConsumer progress;
    private final long startNanos;
    private final long limitNanos;
    private Optional<Schedule.Ending> ending = Optional.empty();

    Stop(BooleanSupplier cancelled, DoubleConsumer progress, Duration timeLimit) {
        this.cancelled = cancelled;
        this.progress = progress;
        startNanos = System.nanoTime();
        limitNanos = timeLimit.compareTo(Duration.ofNanos(Long.MAX_VALUE)) < 0 ? timeLimit.toNanos() : Long.MAX_VALUE;
    }

    @Override
    public boolean getAsBoolean() {
        if (ending.isEmpty() && cancelled.getAsBoolean()) {
            ending = Optional.of(Schedule.Ending.CANCELLED);
        } else if (ending.isEmpty() && System.nanoTime() - startNanos >= limitNanos) {
            ending = Optional.of(Schedule.Ending.TIME_LIMIT);
        }
        return ending.isPresent();
    }

    void tell(double ratio) {
        progress.accept(Math.min(1, ratio));
    }

    Optional<Schedule.Ending> ending() {
        return ending;
    }
}
