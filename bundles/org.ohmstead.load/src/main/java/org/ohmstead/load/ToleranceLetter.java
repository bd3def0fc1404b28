// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.Optional;
import java.util.OptionalDouble;

/** The letters of IEC 60062 for symmetrical tolerances. */
final class ToleranceLetter {
    static final String LETTERS = "BCDFGJKM";

    private static final double[] RATIOS = {0.001, 0.0025, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2};
    private static final double SAME = 1e-9;

    private ToleranceLetter() {}

    static OptionalDouble ratio(char letter) {
        int index = LETTERS.indexOf(letter);
        return index < 0 ? OptionalDouble.empty() : OptionalDouble.of(RATIOS[index]);
    }

    static Optional<String> letter(double toleranceRatio) {
        for (int i = 0; i < RATIOS.length; i++) {
            if (Math.abs(RATIOS[i] - toleranceRatio) < SAME) {
                return Optional.of(LETTERS.substring(i, i + 1));
            }
        }
        return Optional.empty();
    }
}
