// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

/**
 * The tests that this package's constructors share: each returns the checked value or says which parameter is out of
 * which range.
 */
final class Require {
    private Require() {}

    static double positive(double value, String name) {
        if (!Double.isFinite(value) || value <= 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number above 0");
        }
        return value;
    }

    static double notNegative(double value, String name) {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number of at least 0");
        }
        return value;
    }

    static double finite(double value, String name) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number");
        }
        return value;
    }

    static int index(int value, int size, String name) {
        if (value < 0 || value >= size) {
            throw new IllegalArgumentException(name + " is " + value + "; it must lie between 0 and " + (size - 1));
        }
        return value;
    }

    static void size(int found, int wanted, String name) {
        if (found != wanted) {
            throw new IllegalArgumentException(name + " has " + found + " entries; it must have " + wanted);
        }
    }

    static String named(String value, String name) {
        if (value == null || value.isBlank()) {
            throw new IllegalArgumentException(name + " is blank; it needs a text");
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
