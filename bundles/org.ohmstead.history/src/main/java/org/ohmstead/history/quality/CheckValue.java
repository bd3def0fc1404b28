// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.time.Instant;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One value of a check standard.
 *
 * @param entryId entry of the test log that holds it
 * @param takenAt when it was measured
 * @param value in the unit of the check standard
 * @param standardUncertainty in the same unit, at least 0; empty when it is not known
 * @param operator who measured it; may be empty
 * @param bench on which bench; may be empty
 */
public record CheckValue(
        String entryId,
        Instant takenAt,
        double value,
        OptionalDouble standardUncertainty,
        String operator,
        String bench) {
    /** Checks that the value is finite. */
    public CheckValue {
        Objects.requireNonNull(entryId, "entryId");
        Objects.requireNonNull(takenAt, "takenAt");
        Objects.requireNonNull(standardUncertainty, "standardUncertainty");
        Objects.requireNonNull(operator, "operator");
        Objects.requireNonNull(bench, "bench");
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value is " + value + "; it must be a finite number");
        }
    }
}
