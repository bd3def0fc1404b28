// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Duration;

/**
 * Says how long the amplifier is to rest before an item, so that it begins no warmer than the plan reckons with.
 *
 * <pre>{@code
 * Rests aMinuteEach = (item, state) -> Duration.ofMinutes(1);
 * }</pre>
 */
public interface Rests {
    /** No rest before any item. */
    Rests NONE = (item, state) -> Duration.ZERO;

    /**
     * Returns how long to wait from now on.
     *
     * @param item what is to be measured next
     * @param state how far the plan is
     * @return zero or less when it need not wait
     */
    Duration before(PlanItem item, PlanState state);
}
