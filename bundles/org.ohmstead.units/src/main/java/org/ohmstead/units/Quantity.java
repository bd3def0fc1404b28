// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import java.util.Objects;

/**
 * A number with its unit.
 *
 * @param value in the unit itself, without prefix; finite
 * @param unit what it counts
 */
public record Quantity(double value, Unit unit) {
    public Quantity {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value is " + value + "; it must be a finite number");
        }
        Objects.requireNonNull(unit, "unit");
    }
}
