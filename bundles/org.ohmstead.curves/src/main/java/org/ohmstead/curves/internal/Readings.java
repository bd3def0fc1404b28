// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.PowerPoint;

/** What the readings of a curve have in common. */
public final class Readings {

    private Readings() {}

    /** Throws if there is no reading. */
    public static void requireSome(List<PowerPoint> points) {
        if (points.isEmpty()) {
            throw new IllegalArgumentException("points is empty but a curve needs at least one reading.");
        }
    }

    /** Returns how far a voltage lies outside the range of the readings; 0 inside. */
    public static double extrapolationVolts(List<PowerPoint> points, double supplyVolts) {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (PowerPoint point : points) {
            lowest = Math.min(lowest, point.supplyVolts());
            highest = Math.max(highest, point.supplyVolts());
        }
        return Math.max(0, Math.max(lowest - supplyVolts, supplyVolts - highest));
    }

    /**
     * Returns the relative standard deviation to expect of one new reading: the root mean square of the readings'
     * relative uncertainties, times the Birge ratio if that is above 1.
     */
    public static double relativeScatter(List<PowerPoint> points, OptionalDouble birgeRatio) {
        double sum = 0;
        for (PowerPoint point : points) {
            double relative = point.standardUncertaintyWatts() / point.powerWatts();
            sum += relative * relative;
        }
        return Math.sqrt(sum / points.size()) * Math.max(1, birgeRatio.orElse(1));
    }
}
