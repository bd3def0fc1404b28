// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

/** Argument checks that say which parameter was wrong, what it was and what is allowed. */
public final class Checks {

    private Checks() {}

    /** Returns the value if it is finite. */
    public static double finite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + " but must be a finite number.");
        }
        return value;
    }

    /** Returns the value if it is finite and not negative. */
    public static double notNegative(String name, double value) {
        if (finite(name, value) < 0) {
            throw new IllegalArgumentException(name + " is " + value + " but must be zero or greater.");
        }
        return value;
    }

    /** Returns the value if it is finite and greater than zero. */
    public static double positive(String name, double value) {
        if (finite(name, value) <= 0) {
            throw new IllegalArgumentException(name + " is " + value + " but must be greater than zero.");
        }
        return value;
    }
}
