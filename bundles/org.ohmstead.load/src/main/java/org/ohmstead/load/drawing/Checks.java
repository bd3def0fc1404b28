// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.OptionalDouble;

/** Says what is wrong with a parameter. */
final class Checks {
    private Checks() {}

    static <T> T present(T value, String name) {
        if (value == null) {
            throw new IllegalArgumentException(name + " is missing");
        }
        return value;
    }

    static double finite(double value, String name) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number");
        }
        return value;
    }

    static OptionalDouble positive(OptionalDouble value, String name) {
        present(value, name);
        if (value.isPresent() && !(value.getAsDouble() > 0 && Double.isFinite(value.getAsDouble()))) {
            throw new IllegalArgumentException(
                    name + " is " + value.getAsDouble() + "; it must be a finite number above 0");
        }
        return value;
    }

    static double ratio(double value, String name) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must lie between 0 and 1");
        }
        return value;
    }
}
