// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.time.Duration;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** Says when the search has to end early, and why. */
final class Stop implements BooleanSupplier {
    private final BooleanSupplier cancelled;
    private final long startNanos;
    private final long limitNanos;
    private Optional<SearchResult.Ending> ending = Optional.empty();

    Stop(BooleanSupplier cancelled, Duration timeLimit) {
        this.cancelled = cancelled;
        startNanos = System.nanoTime();
        limitNanos = timeLimit.compareTo(Duration.ofNanos(Long.MAX_VALUE)) < 0 ? timeLimit.toNanos() : Long.MAX_VALUE;
    }

    @Override
    public boolean getAsBoolean() {
        if (ending.isEmpty() && cancelled.getAsBoolean()) {
            ending = Optional.of(SearchResult.Ending.CANCELLED);
        } else if (ending.isEmpty() && System.nanoTime() - startNanos >= limitNanos) {
            ending = Optional.of(SearchResult.Ending.TIME_LIMIT);
        }
        return ending.isPresent();
    }

    Optional<SearchResult.Ending> ending() {
        return ending;
    }
}
