// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

/** Which of the many intervals with the same coverage probability is meant (JCGM 101:2008, 5.3). */
public enum IntervalKind {
    /** As much probability below the interval as above it. */
    SYMMETRIC,
    /** The shortest of all intervals, the one of choice for a lopsided distribution. */
    SHORTEST;

    /** Returns this interval of a Monte Carlo result. */
    public CoverageInterval of(MonteCarlo result, double probability) {
        return this == SYMMETRIC ? result.symmetricInterval(probability) : result.shortestInterval(probability);
    }
}
