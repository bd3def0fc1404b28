// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

/** Tests of parameters. */
final class Checks {
    private Checks() {}

    static double positive(double value, String name) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number above 0");
        }
        return value;
    }

    static double finite(double value, String name) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number");
        }
        return value;
    }

    static double within(double value, double lowest, double highest, String name) {
        if (!(value >= lowest && value <= highest)) {
            throw new IllegalArgumentException(
                    name + " is " + value + "; it must lie between " + lowest + " and " + highest);
        }
        return value;
    }
}
