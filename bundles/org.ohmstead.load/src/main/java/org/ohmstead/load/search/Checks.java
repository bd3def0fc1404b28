// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.OptionalDouble;

/** Checks of arguments, with messages that name the parameter, the value and what would be right. */
final class Checks {
    private Checks() {}

    static double finite(double value, String name) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number");
        }
        return value;
    }

    static double positive(double value, String name) {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number above 0");
        }
        return value;
    }

    static int within(int value, int lowest, int highest, String name) {
        if (value < lowest || value > highest) {
            throw new IllegalArgumentException(
                    name + " is " + value + "; it must be between " + lowest + " and " + highest);
        }
        return value;
    }

    static void ratio(double value, String name) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be between 0 and 1");
        }
    }

    static void positive(OptionalDouble value, String name) {
        present(value, name);
        value.ifPresent(number -> positive(number, name));
    }

    static <T> T present(T value, String name) {
        if (value == null) {
            throw new IllegalArgumentException(name + " is null; it must be there");
        }
        return value;
    }
}
