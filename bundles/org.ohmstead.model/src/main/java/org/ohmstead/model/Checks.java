// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/** The tests that record constructors share: each returns the checked value or says which parameter is out of which range. */
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

    static double atLeast(double value, double lowest, String name) {
        if (!Double.isFinite(value) || value < lowest) {
            throw new IllegalArgumentException(
                    name + " is " + value + "; it must be a finite number of at least " + lowest);
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

    /** Returns a copy in the order of the names. */
    static Map<String, String> texts(Map<String, String> values, String name) {
        Map<String, String> copy = new TreeMap<>();
        present(values, name).forEach((key, value) -> copy.put(named(key, name), present(value, name)));
        return Collections.unmodifiableMap(copy);
    }
}
