// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The part of a plot that is in view.
 *
 * @param lowerX left end, in the unit of the x axis; finite
 * @param upperX right end, above {@code lowerX}
 * @param lowerY lower end, in the unit of the y axis; empty, as {@code upperY} then is too, for the height of the whole
 * @param upperY upper end, above {@code lowerY}
 */
public record ViewWindow(double lowerX, double upperX, OptionalDouble lowerY, OptionalDouble upperY) {
    /** Checks the parameters. */
    public ViewWindow {
        Objects.requireNonNull(lowerY, "lowerY");
        Objects.requireNonNull(upperY, "upperY");
        check("X", lowerX, upperX);
        if (lowerY.isPresent() != upperY.isPresent()) {
            throw new IllegalArgumentException("lowerY and upperY must both be given or both be empty.");
        }
        if (lowerY.isPresent()) {
            check("Y", lowerY.getAsDouble(), upperY.getAsDouble());
        }
    }

    private static void check(String axis, double lower, double upper) {
        if (!(lower < upper) || !Double.isFinite(upper - lower)) {
            throw new IllegalArgumentException("lower" + axis + " must be below upper" + axis
                    + " and both finite but they are " + lower + " and " + upper + ".");
        }
    }

    /** Returns a window over the x axis alone, as high as the whole plot. */
    public static ViewWindow ofX(double lowerX, double upperX) {
        return new ViewWindow(lowerX, upperX, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** Returns a window with all four ends. */
    public static ViewWindow of(double lowerX, double upperX, double lowerY, double upperY) {
        return new ViewWindow(lowerX, upperX, OptionalDouble.of(lowerY), OptionalDouble.of(upperY));
    }
}
