// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.Objects;
import java.util.OptionalInt;

/** The checks that the records of this package share. */
final class Checks {
    private Checks() {}

    static double finite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be a finite number but is " + value + ".");
        }
        return value;
    }

    static int tone(int tone) {
        if (tone < 0 || tone >= Palette.TONES) {
            throw new IllegalArgumentException(
                    "tone must be from 0 to " + (Palette.TONES - 1) + " but is " + tone + ".");
        }
        return tone;
    }

    static OptionalInt tone(OptionalInt tone) {
        Objects.requireNonNull(tone, "tone");
        tone.ifPresent(Checks::tone);
        return tone;
    }

    static String notBlank(String name, String text) {
        Objects.requireNonNull(text, name);
        if (text.isBlank()) {
            throw new IllegalArgumentException(name + " must not be blank.");
        }
        return text;
    }

    static void sameLength(String firstName, double[] first, String secondName, double[] second) {
        if (first.length != second.length) {
            throw new IllegalArgumentException(firstName + " and " + secondName
                    + " must have equally many values but have " + first.length + " and " + second.length + ".");
        }
    }
}
