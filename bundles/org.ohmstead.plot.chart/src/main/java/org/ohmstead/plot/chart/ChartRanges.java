// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

/**
 * What the axes of a plot show when it is drawn: the fixed ends where the plot fixes them, else those that the data ask
 * for.
 *
 * @param lowerX left end of the x axis
 * @param upperX its right end, above {@code lowerX}
 * @param lowerY lower end of the y axis
 * @param upperY its upper end, above {@code lowerY}
 */
public record ChartRanges(double lowerX, double upperX, double lowerY, double upperY) {
    /** Checks the parameters. */
    public ChartRanges {
        check("x", lowerX, upperX);
        check("y", lowerY, upperY);
    }

    private static void check(String axis, double lower, double upper) {
        if (!(lower < upper)) {
            throw new IllegalArgumentException("The lower end of " + axis + " must be below the upper but they are "
                    + lower + " and " + upper + ".");
        }
    }
}
