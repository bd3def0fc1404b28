// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.List;

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
            throw new IllegalArgumentException(name + " is " + value + "; it must be above 0");
        }
        return value;
    }

    static double notNegative(double value, String name) {
        if (!(value >= 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be at least 0");
        }
        return value;
    }

    static double within(double value, double lowest, double highest, String name) {
        if (!(value >= lowest && value <= highest)) {
            throw new IllegalArgumentException(
                    name + " is " + value + "; it must be between " + lowest + " and " + highest);
        }
        return value;
    }

    static String named(String value, String name) {
        if (value == null || value.isBlank()) {
            throw new IllegalArgumentException(name + " is blank; it must be a text");
        }
        return value;
    }

    static <T> T present(T value, String name) {
        if (value == null) {
            throw new IllegalArgumentException(name + " is null; it must be there");
        }
        return value;
    }

    static List<Network> members(List<Network> members) {
        List<Network> copy = List.copyOf(members);
        if (copy.size() < 2) {
            throw new IllegalArgumentException(
                    "members has " + copy.size() + " entries; a connection needs at least 2");
        }
        return copy;
    }

    static List<Resistor> resistors(List<Network> members) {
        return members.stream().flatMap(member -> member.resistors().stream()).toList();
    }
}
