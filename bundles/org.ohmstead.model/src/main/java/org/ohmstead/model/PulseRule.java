// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * The short overload that a resistor's maker allows once, from cold: so many times the rated power for so long. MIL-PRF-39009, for
 * example, tests chassis-mounted wirewound parts with 5 times for 5 s.
 *
 * @param overloadRatio times the rated power, above 1 and up to 1000
 * @param durationSeconds for how long, above 0
 */
public record PulseRule(double overloadRatio, double durationSeconds) {
    private static final double HIGHEST_RATIO = 1000;

    public PulseRule {
        Checks.finite(overloadRatio, "overloadRatio");
        if (overloadRatio <= 1 || overloadRatio > HIGHEST_RATIO) {
            throw new IllegalArgumentException("overloadRatio is " + overloadRatio
                    + "; it must be above 1 and at most 1000 times the rated power");
        }
        Checks.positive(durationSeconds, "durationSeconds");
    }
}
