// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.time.Duration;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** How long a word may search. */
final class TimeLimitOption {
    private static final double LONGEST_SECONDS = 1e6;

    @Option(
            names = "--time-limit-seconds",
            paramLabel = "S",
            defaultValue = "20",
            descriptionKey = "time.limit.time-limit-seconds")
    private String timeLimitSeconds;

    /** Returns it, at least a millisecond. */
    Duration limit() throws InputException {
        double seconds = Quantities.positive(timeLimitSeconds, Unit.SECOND, "--time-limit-seconds");
        return Duration.ofMillis(Math.max(1, Math.round(1000 * Math.min(seconds, LONGEST_SECONDS))));
    }
}
