// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import org.ohmstead.units.text.Messages;

/**
 * By what the standard uncertainties are widened that people see, as the user chose; the same for the whole process, because there is one
 * user before one screen. The desk sets it. Verdicts and sheets do not follow it.
 */
public final class Coverage {
    private static final Messages TEXTS = Messages.of(Coverage.class);

    /** The factor that is meant unless another is chosen (GUM 6.3.3: about 95 % for a normal distribution). */
    public static final int USUAL_FACTOR = 2;

    private static final int LARGEST_FACTOR = 3;
    /** Shares of a normal distribution within so many standard deviations, rounded. */
    private static final String[] SHARES = {"68 %", "95 %", "99.7 %"};

    private static volatile int factor = USUAL_FACTOR;

    private Coverage() {}

    /** Returns the factor: 1, 2 or 3. */
    public static int factor() {
        return factor;
    }

    /** Sets the factor: 1, 2 or 3. Texts that are there already do not change by themselves. */
    public static void use(int newFactor) {
        check(newFactor);
        factor = newFactor;
    }

    /** Returns whether it is a factor that can be chosen. */
    public static boolean choosable(int coverageFactor) {
        return coverageFactor >= 1 && coverageFactor <= LARGEST_FACTOR;
    }

    /** Throws an IllegalArgumentException unless it is a factor that can be chosen. */
    public static void check(int coverageFactor) {
        if (!choosable(coverageFactor)) {
            throw new IllegalArgumentException(
                    "coverageFactor is " + coverageFactor + "; it must lie between 1 and " + LARGEST_FACTOR);
        }
    }

    /** Returns a standard uncertainty times the factor. */
    public static double expanded(double standardUncertainty) {
        return factor * standardUncertainty;
    }

    /** Returns the factor as it stands beside an uncertainty: "k = 2". */
    public static String words() {
        return words(factor);
    }

    /** Returns a factor as it stands beside an uncertainty: "k = 2". */
    public static String words(int coverageFactor) {
        return "k = " + coverageFactor;
    }

    /** Returns the factor with the share of a normal distribution that lies within: "k = 2, 95 %". */
    public static String wordsWithShare() {
        int shown = factor;
        return words(shown) + ", " + Numbers.localised(SHARES[shown - 1]);
    }

    /** Returns what a standard uncertainty times the factor is called: "Expanded", "Standard" for 1. */
    public static String adjective() {
        return TEXTS.text(factor == 1 ? "coverage.standard" : "coverage.expanded");
    }
}
