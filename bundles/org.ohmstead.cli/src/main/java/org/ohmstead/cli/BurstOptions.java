// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** The rhythm of bursts, as options. */
final class BurstOptions {
    private static final double LONGEST_SECONDS = 1e6;
    private static final double SHORTEST_SECONDS = 1e-6;

    @Option(names = "--on-seconds", paramLabel = "S", descriptionKey = "burst.on-seconds")
    private String onSeconds;

    @Option(names = "--period-seconds", paramLabel = "S", descriptionKey = "burst.period-seconds")
    private String periodSeconds;

    /** A rhythm: how long each burst is, and how far they are apart from start to start. */
    record Rhythm(double onSeconds, double periodSeconds) {}

    /** Returns whether there are bursts. */
    boolean given() {
        return onSeconds != null || periodSeconds != null;
    }

    /** Returns the rhythm. */
    Rhythm rhythm() throws InputException {
        if (onSeconds == null || periodSeconds == null) {
            throw new InputException(Texts.of("bursts.both"));
        }
        double on = Quantities.within(onSeconds, Unit.SECOND, SHORTEST_SECONDS, LONGEST_SECONDS, "--on-seconds");
        double period =
                Quantities.within(periodSeconds, Unit.SECOND, SHORTEST_SECONDS, LONGEST_SECONDS, "--period-seconds");
        if (period <= on) {
            throw new InputException(Texts.of("bursts.short", periodSeconds, onSeconds));
        }
        return new Rhythm(on, period);
    }
}
