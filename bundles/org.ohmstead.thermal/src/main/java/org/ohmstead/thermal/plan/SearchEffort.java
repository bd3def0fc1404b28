// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.time.Duration;

/**
 * How long to look for a better order. With the same seed and the same number of trials the answer is the same, unless
 * the time is over first.
 *
 * @param seed of the random moves
 * @param mostTrials how many orders are looked at after those that come first to mind, at least 0
 * @param timeLimit time after which the search ends with what it has, above 0
 */
public record SearchEffort(long seed, int mostTrials, Duration timeLimit) {
    /** What does for plans of up to 200 steps. */
    public static final SearchEffort USUAL = new SearchEffort(1, 30_000, Duration.ofSeconds(10));

    public SearchEffort {
        if (mostTrials < 0) {
            throw new IllegalArgumentException("mostTrials is " + mostTrials + "; it must be at least 0");
        }
        Require.present(timeLimit, "timeLimit");
        if (timeLimit.isNegative() || timeLimit.isZero()) {
            throw new IllegalArgumentException("timeLimit is " + timeLimit + "; it must be above 0");
        }
    }
}
