// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;

/** Checks of parameters. */
final class Checks {
    private Checks() {}

    static <T> T present(T value, String name) {
        if (value == null) {
            throw new IllegalArgumentException(name + " is null; it must be given");
        }
        return value;
    }

    static String named(String text, String name) {
        if (present(text, name).isBlank()) {
            throw new IllegalArgumentException(name + " is blank; it must be a text");
        }
        return text;
    }

    /** Names that stand in files and on command lines: small letters, digits and hyphens. */
    static String id(String text, String name) {
        if (!present(text, name).matches("[a-z][a-z0-9-]*")) {
            throw new IllegalArgumentException(name + " is '" + text
                    + "'; it must be of small letters, digits and hyphens and begin with a letter");
        }
        return text;
    }

    static double finite(double value, String name) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number");
        }
        return value;
    }

    static double notNegative(double value, String name) {
        if (finite(value, name) < 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be at least 0");
        }
        return value;
    }

    static int digits(int digits, String name) {
        if (digits < 1 || digits > 9) {
            throw new IllegalArgumentException(name + " is " + digits + "; it must lie between 1 and 9");
        }
        return digits;
    }

    static <T> List<T> some(List<T> list, String name) {
        List<T> copy = List.copyOf(present(list, name));
        if (copy.isEmpty()) {
            throw new IllegalArgumentException(name + " is empty; it must have at least one entry");
        }
        return copy;
    }
}
