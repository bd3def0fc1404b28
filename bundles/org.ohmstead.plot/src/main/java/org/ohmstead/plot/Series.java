// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Points that belong together.
 *
 * @param name what the legend says; empty to leave the series out of the legend
 * @param points the points in drawing order; may be empty
 * @param style how they are drawn
 * @param tone the index of the colour and marker in {@link Palette}, 0 to 7
 */
public record Series(String name, List<PlotPoint> points, Style style, int tone) {
    /** Checks the parameters and copies the points. */
    public Series {
        Objects.requireNonNull(name, "name");
        points = List.copyOf(points);
        Objects.requireNonNull(style, "style");
        Checks.tone(tone);
        if (style == Style.STACKED_BARS) {
            for (PlotPoint point : points) {
                if (point.y() < 0) {
                    throw new IllegalArgumentException(
                            "y must be 0 or more in stacked bars but is " + point.y() + " at x = " + point.x() + ".");
                }
            }
        }
    }

    /** Returns a series of the points (x[i], y[i]); the arrays must be equally long. */
    public static Series of(String name, double[] x, double[] y, Style style, int tone) {
        Checks.sameLength("x", x, "y", y);
        List<PlotPoint> points = new ArrayList<>(x.length);
        for (int i = 0; i < x.length; i++) {
            points.add(new PlotPoint(x[i], y[i]));
        }
        return new Series(name, points, style, tone);
    }

    /** Returns a series of points (x[i], y[i]) with bars y[i] ± barHalfLengths[i]; the arrays must be equally long. */
    public static Series withBars(String name, double[] x, double[] y, double[] barHalfLengths, Style style, int tone) {
        Checks.sameLength("x", x, "y", y);
        Checks.sameLength("x", x, "barHalfLengths", barHalfLengths);
        List<PlotPoint> points = new ArrayList<>(x.length);
        for (int i = 0; i < x.length; i++) {
            points.add(new PlotPoint(x[i], y[i], barHalfLengths[i]));
        }
        return new Series(name, points, style, tone);
    }
}
