// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** The tests that the records of a result share. */
final class Checks {
    private Checks() {}

    static void finite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be finite, but is " + value);
        }
    }

    static void zeroOrAbove(String name, double value) {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(name + " must be finite and 0 or above, but is " + value);
        }
    }
}
