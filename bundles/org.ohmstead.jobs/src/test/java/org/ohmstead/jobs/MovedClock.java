// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that a test moves, with a steady one beside it that does not follow when this one is set. */
final class MovedClock extends Clock {
    private static final Instant START = Instant.parse("2026-03-02T09:14:05Z");

    /** What it shows. */
    Instant now = START;

    private Duration setBy = Duration.ZERO;

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException("one zone is enough");
    }

    @Override
    public Instant instant() {
        return now;
    }

    /** Nanoseconds of the steady one. */
    long nanos() {
        return Duration.between(START, now.minus(setBy)).toNanos();
    }

    /** Lets time pass. */
    void pass(Duration time) {
        now = now.plus(time);
    }

    /** Sets it. */
    void set(Duration forth) {
        now = now.plus(forth);
        setBy = setBy.plus(forth);
    }
}
