// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Scale;

/** Collects the values that an axis must show and gives the range that shows them well. */
final class AxisRange {
    private static final double ROUNDING_PARTS = 10;
    private static final double ZERO_PULL = 0.4;

    private final Axis axis;
    private double lowest = Double.POSITIVE_INFINITY;
    private double highest = Double.NEGATIVE_INFINITY;

    AxisRange(Axis axis) {
        this.axis = axis;
    }

    /** The ends of a range. */
    record Ends(double lower, double upper) {}

    void include(double value) {
        if (axis.accepts(value)) {
            lowest = Math.min(lowest, value);
            highest = Math.max(highest, value);
        }
    }

    /**
     * The range: the fixed ends where given; else the data's with {@code margin} (a fraction of the length) added, and
     * with {@code rounded} set, moved out to round numbers.
     */
    Ends ends(double margin, boolean rounded) {
        boolean log = axis.scale() == Scale.LOG;
        if (highest < lowest && axis.lower().isEmpty() && axis.upper().isEmpty()) {
            return log ? new Ends(1, 10) : new Ends(0, 1);
        }
        Ends data = known();
        Ends scaled = log ? new Ends(Math.log10(data.lower()), Math.log10(data.upper())) : data;
        Ends wide = padded(widened(scaled, log), margin, rounded, log);
        if (rounded) {
            double[] round = log ? roundLog(wide.lower(), wide.upper()) : roundLinear(wide.lower(), wide.upper());
            wide = new Ends(round[0], round[1]);
        }
        double lower = axis.lower().orElse(log ? Math.pow(10, wide.lower()) : wide.lower());
        double upper = axis.upper().orElse(log ? Math.pow(10, wide.upper()) : wide.upper());
        return lower < upper ? new Ends(lower, upper) : opened(lower, upper);
    }

    /** A range of no length gets one. */
    private static Ends widened(Ends ends, boolean log) {
        double low = ends.lower();
        double high = ends.upper();
        if (high - low >= Math.abs(high) * 1e-9 && high > low) {
            return ends;
        }
        double half = log ? 0.15 : Math.max(Math.abs(high) * 0.1, 1e-12);
        return new Ends(low - half, high + half);
    }

    private static Ends padded(Ends ends, double margin, boolean rounded, boolean log) {
        double pad = (ends.upper() - ends.lower()) * margin;
        boolean fromZero = !log && rounded && ends.lower() >= 0 && ends.lower() < ZERO_PULL * ends.upper();
        boolean mayCross = log || !rounded;
        return new Ends(fromZero ? 0 : padded(ends.lower(), -pad, mayCross), padded(ends.upper(), pad, mayCross));
    }

    private Ends known() {
        double low = axis.lower().orElse(lowest);
        double high = axis.upper().orElse(highest);
        if (Double.isFinite(low) && Double.isFinite(high)) {
            return low <= high ? new Ends(low, high) : opened(low, high);
        }
        if (Double.isFinite(low)) {
            return opened(low, Double.NEGATIVE_INFINITY);
        }
        return opened(Double.POSITIVE_INFINITY, high);
    }

    // A fixed end beyond all data leaves the other end without a value of its own.
    private Ends opened(double lower, double upper) {
        boolean log = axis.scale() == Scale.LOG;
        if (axis.upper().isPresent()) {
            double fixed = axis.upper().getAsDouble();
            return new Ends(log ? fixed / 10 : fixed - Math.max(1, Math.abs(fixed)), fixed);
        }
        double fixed = axis.lower().orElse(Math.min(lower, upper));
        return new Ends(fixed, log ? fixed * 10 : fixed + Math.max(1, Math.abs(fixed)));
    }

    // Padding of values must not cross zero where none does: a power or a loss below zero would look possible.
    private static double padded(double end, double pad, boolean mayCross) {
        boolean crosses = !mayCross && Math.signum(end) * Math.signum(end + pad) <= 0;
        return crosses ? 0 : end + pad;
    }

    private static double[] roundLinear(double low, double high) {
        RoundNumbers.Step step = RoundNumbers.step(high - low, ROUNDING_PARTS);
        double size = step.value();
        double lower = step.times((long) Math.floor(low / size + 1e-9)).doubleValue();
        double upper = step.times((long) Math.ceil(high / size - 1e-9)).doubleValue();
        return new double[] {lower, upper};
    }

    private static double[] roundLog(double low, double high) {
        double lower = Math.floor(low);
        double upper = Math.floor(high);
        for (double place : new double[] {Math.log10(2), Math.log10(5), 1}) {
            if (Math.floor(low) + place <= low + 1e-9) {
                lower = Math.floor(low) + place;
            }
            if (upper < high - 1e-9) {
                upper = Math.floor(high) + place;
            }
        }
        return new double[] {lower, upper};
    }
}
