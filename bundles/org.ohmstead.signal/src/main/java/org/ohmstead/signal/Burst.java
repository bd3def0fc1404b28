// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.OptionalDouble;

/**
 * What was found of a tone burst: a tone that is on for a while, and off or much lower for the rest.
 *
 * @param onsetSeconds when the first whole burst of the record begins, from the first sample
 * @param onSeconds how long a burst lasts; if the record begins or ends inside its only burst, the part that it holds
 * @param periodSeconds time from one burst to the next; empty if the record holds only one
 * @param wholeBursts number of bursts that lie wholly in the record and were evaluated; 0 if only a part of one is
 *     there
 * @param cycles whole cycles of the tone in one burst, 1 or above
 * @param powerWatts mean power inside the bursts, over whole cycles and over all whole bursts
 * @param meanPowerWatts mean power over whole burst periods, or over the whole record if the period is not known
 */
public record Burst(
        double onsetSeconds,
        double onSeconds,
        OptionalDouble periodSeconds,
        int wholeBursts,
        int cycles,
        double powerWatts,
        double meanPowerWatts) {
    /** Checks the ranges. */
    public Burst {
        Checks.zeroOrAbove("onsetSeconds", onsetSeconds);
        Checks.zeroOrAbove("onSeconds", onSeconds);
        Checks.zeroOrAbove("powerWatts", powerWatts);
        Checks.zeroOrAbove("meanPowerWatts", meanPowerWatts);
        if (periodSeconds.isPresent()) {
            Checks.zeroOrAbove("periodSeconds", periodSeconds.getAsDouble());
        }
        if (wholeBursts < 0 || cycles < 1) {
            throw new IllegalArgumentException(
                    "wholeBursts must be 0 or above and cycles 1 or above, but are " + wholeBursts + " and " + cycles);
        }
    }
}
