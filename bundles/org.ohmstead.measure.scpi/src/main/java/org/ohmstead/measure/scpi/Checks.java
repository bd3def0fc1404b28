// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.time.Duration;

/** The tests that constructors and methods share: each returns the checked value or says which parameter is out of which range. */
final class Checks {
    private Checks() {}

    static double positive(double value, String name) {
        if (!Double.isFinite(value) || value <= 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number above 0");
        }
        return value;
    }

    static int within(int value, int lowest, int highest, String name) {
        if (value < lowest || value > highest) {
            throw new IllegalArgumentException(
                    name + " is " + value + "; it must lie between " + lowest + " and " + highest);
        }
        return value;
    }

    static Duration positive(Duration value, String name) {
        if (present(value, name).isNegative() || value.isZero()) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be above 0");
        }
        return value;
    }

    static <T> T present(T value, String name) {
        if (value == null) {
            throw new IllegalArgumentException(name + " is missing");
        }
        return value;
    }
}
