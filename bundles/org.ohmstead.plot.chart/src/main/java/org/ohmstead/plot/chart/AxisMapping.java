// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import java.util.Objects;
import org.ohmstead.plot.Scale;

/**
 * How values along one axis of a drawn chart lie on the drawing.
 *
 * @param scale linear or logarithmic
 * @param lower value at the lower end; above zero on a log axis
 * @param upper value at the upper end, above {@code lower}
 * @param lowerPosition where the lower end was drawn, in points from the left (x axis) or the top (y axis)
 * @param upperPosition where the upper end was drawn; for a y axis less than {@code lowerPosition}
 */
public record AxisMapping(Scale scale, double lower, double upper, double lowerPosition, double upperPosition) {
    /** Checks the parameters. */
    public AxisMapping {
        Objects.requireNonNull(scale, "scale");
        if (!(lower < upper) || scale == Scale.LOG && !(lower > 0)) {
            throw new IllegalArgumentException("lower must be below upper, and above 0 on a log axis, but they are "
                    + lower + " and " + upper + ".");
        }
    }

    /** Returns where the value lies, in points; on a log axis minus or plus infinity for values not above zero. */
    public double toPosition(double value) {
        double fraction = (transformed(value) - transformed(lower)) / (transformed(upper) - transformed(lower));
        return lowerPosition + fraction * (upperPosition - lowerPosition);
    }

    /** Returns the value at a position in points; positions outside the axis are extrapolated. */
    public double toValue(double position) {
        double fraction = (position - lowerPosition) / (upperPosition - lowerPosition);
        double transformed = transformed(lower) + fraction * (transformed(upper) - transformed(lower));
        return scale == Scale.LOG ? Math.exp(transformed) : transformed;
    }

    private double transformed(double value) {
        if (scale == Scale.LINEAR) {
            return value;
        }
        return value > 0 ? Math.log(value) : Double.NEGATIVE_INFINITY;
    }
}
