// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A tinted area between a lower and an upper edge over x, such as a confidence band or a layer of a balance.
 *
 * @param name what the legend says; empty to leave the band out of the legend
 * @param points the edges, x rising; on a log y axis edges below the axis end at its bottom
 * @param tone the index of the colour in {@link Palette}, 0 to 7
 */
public record Band(String name, List<BandPoint> points, int tone) {
    /** Checks the parameters and copies the points. */
    public Band {
        Objects.requireNonNull(name, "name");
        points = List.copyOf(points);
        Checks.tone(tone);
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).x() < points.get(i - 1).x()) {
                throw new IllegalArgumentException("x must not fall along a band but goes from "
                        + points.get(i - 1).x() + " to " + points.get(i).x() + ".");
            }
        }
    }

    /** Returns a band with the edges (x[i], lower[i]) and (x[i], upper[i]); the arrays must be equally long. */
    public static Band of(String name, double[] x, double[] lower, double[] upper, int tone) {
        Checks.sameLength("x", x, "lower", lower);
        Checks.sameLength("x", x, "upper", upper);
        List<BandPoint> points = new ArrayList<>(x.length);
        for (int i = 0; i < x.length; i++) {
            points.add(new BandPoint(x[i], lower[i], upper[i]));
        }
        return new Band(name, points, tone);
    }
}
