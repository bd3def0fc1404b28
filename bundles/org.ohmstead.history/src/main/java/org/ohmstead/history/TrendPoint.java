// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.time.Instant;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A figure at one moment.
 *
 * @param entryId entry of the log that holds it
 * @param takenAt when it was measured
 * @param value of it
 * @param standardUncertainty of it, at least 0; empty when it is not known
 */
public record TrendPoint(String entryId, Instant takenAt, double value, OptionalDouble standardUncertainty) {
    /** Checks that the value is finite. */
    public TrendPoint {
        Objects.requireNonNull(entryId, "entryId");
        Objects.requireNonNull(takenAt, "takenAt");
        Objects.requireNonNull(standardUncertainty, "standardUncertainty");
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value is " + value + "; it must be a finite number");
        }
    }
}
