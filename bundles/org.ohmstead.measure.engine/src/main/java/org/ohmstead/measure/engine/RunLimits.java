// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Duration;

/**
 * How long and how much is waited for and kept.
 *
 * @param benchCall longest time for one call to a bench, beside the seconds that an acquisition asks for
 * @param personCall the same for a bench that asks a person; the time that a person takes does not count as the measurement's
 * @param question longest time for what a plug-in must answer at once: information, readiness, precautions, standing down
 * @param grace how long a plug-in may take to end after it was told to
 * @param observeEvery how often the meters are read when something is fed and the measurement does not use the bench
 * @param mostCaptures most recordings that one run may keep
 * @param mostLines most lines of progress that are kept
 */
public record RunLimits(
        Duration benchCall,
        Duration personCall,
        Duration question,
        Duration grace,
        Duration observeEvery,
        int mostCaptures,
        int mostLines) {
    public RunLimits {
        positive(benchCall, "benchCall");
        positive(personCall, "personCall");
        positive(question, "question");
        positive(grace, "grace");
        positive(observeEvery, "observeEvery");
        if (mostCaptures < 1 || mostLines < 1) {
            throw new IllegalArgumentException(
                    "mostCaptures is " + mostCaptures + " and mostLines is " + mostLines + "; both must be at least 1");
        }
    }

    /** Returns what suits instruments and people. */
    public static RunLimits usual() {
        return new RunLimits(
                Duration.ofMinutes(2),
                Duration.ofHours(2),
                Duration.ofSeconds(5),
                Duration.ofSeconds(3),
                Duration.ofSeconds(1),
                1000,
                200);
    }

    private static void positive(Duration value, String name) {
        if (value == null || value.isNegative() || value.isZero()) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be above 0");
        }
    }
}
