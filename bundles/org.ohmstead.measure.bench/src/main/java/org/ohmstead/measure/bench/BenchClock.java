// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.time.Instant;

/** The time of a bench that needs none of its own. */
public interface BenchClock {
    /** Returns the moment that the bench has come to. */
    Instant now();

    /**
     * Lets time go by.
     *
     * @param seconds at least 0
     * @throws InterruptedException when the wait was ended
     */
    void pass(double seconds) throws InterruptedException;
}
