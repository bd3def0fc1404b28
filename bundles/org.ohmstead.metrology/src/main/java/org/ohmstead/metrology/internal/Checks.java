// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import java.util.Locale;

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

    /** Returns the degrees of freedom if they are greater than zero; infinity is allowed. */
    public static double degreesOfFreedom(double degreesOfFreedom) {
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException("degreesOfFreedom is " + degreesOfFreedom
                    + " but must be greater than zero; infinity stands for a perfectly known uncertainty.");
        }
        return degreesOfFreedom;
    }

    /** Returns the probability if it lies strictly between 0 and 1. */
    public static double probability(String name, double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException(name + " is " + probability + " but must lie strictly between 0 and 1.");
        }
        return probability;
    }

    /** Throws unless the two counts agree. */
    public static void sameLength(String name, int length, String otherName, int otherLength) {
        if (length != otherLength) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "%s has %d entries but %s has %d; they must agree.",
                    name,
                    length,
                    otherName,
                    otherLength));
        }
    }
}
