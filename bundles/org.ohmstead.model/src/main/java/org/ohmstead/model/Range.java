// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * A quantity that is known only to lie between two values; its unit is in the name of whatever holds it.
 *
 * @param low the least it may be
 * @param high the most it may be, at least {@code low}; equal to it when the quantity is known
 */
public record Range(double low, double high) {
    public Range {
        Checks.finite(low, "low");
        Checks.finite(high, "high");
        if (high < low) {
            throw new IllegalArgumentException("high is " + high + "; it must be at least low, which is " + low);
        }
    }

    /** Returns the range of a known value. */
    public static Range of(double value) {
        return new Range(value, value);
    }

    /** Returns the value half way between both ends. */
    public double middle() {
        return low + (high - low) / 2;
    }

    /** Returns whether both ends are the same. */
    public boolean known() {
        return low == high;
    }
}
