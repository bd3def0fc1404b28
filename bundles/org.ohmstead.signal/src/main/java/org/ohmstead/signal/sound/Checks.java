// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

/** The tests that the records of this package share. */
final class Checks {
    private Checks() {}

    static void finite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be finite, but is " + value);
        }
    }

    static void notNegative(String name, double value) {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(name + " must be finite and 0 or above, but is " + value);
        }
    }

    static void positive(String name, double value) {
        if (!Double.isFinite(value) || value <= 0) {
            throw new IllegalArgumentException(name + " must be finite and above 0, but is " + value);
        }
    }

    static <T> T given(String name, T value) {
        if (value == null) {
            throw new IllegalArgumentException(name + " must be given, but is null");
        }
        return value;
    }
}
