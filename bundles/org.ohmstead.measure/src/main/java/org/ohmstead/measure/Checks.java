// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

/** The tests that constructors and methods share: each returns the checked value or says which parameter is out of which range. */
final class Checks {
    private Checks() {}

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

    static double within(double value, double lowest, double highest, String name) {
        if (!Double.isFinite(value) || value < lowest || value > highest) {
            throw new IllegalArgumentException(
                    name + " is " + value + "; it must lie between " + lowest + " and " + highest);
        }
        return value;
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
