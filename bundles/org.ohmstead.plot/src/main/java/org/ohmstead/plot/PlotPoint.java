// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One point of a series.
 *
 * @param x the place along the x axis, in its unit; finite
 * @param y the place along the y axis, in its unit; finite
 * @param barHalfLength half the length of the vertical uncertainty bar, in the unit of y (usually the expanded
 *     uncertainty U); zero or more; empty for no bar
 */
public record PlotPoint(double x, double y, OptionalDouble barHalfLength) {
    /** Checks the parameters. */
    public PlotPoint {
        Checks.finite("x", x);
        Checks.finite("y", y);
        Objects.requireNonNull(barHalfLength, "barHalfLength");
        if (barHalfLength.isPresent() && Checks.finite("barHalfLength", barHalfLength.getAsDouble()) < 0) {
            throw new IllegalArgumentException(
                    "barHalfLength must be 0 or more but is " + barHalfLength.getAsDouble() + ".");
        }
    }

    /** Makes a point without an uncertainty bar. */
    public PlotPoint(double x, double y) {
        this(x, y, OptionalDouble.empty());
    }

    /** Makes a point with an uncertainty bar from {@code y - barHalfLength} to {@code y + barHalfLength}. */
    public PlotPoint(double x, double y, double barHalfLength) {
        this(x, y, OptionalDouble.of(barHalfLength));
    }
}
