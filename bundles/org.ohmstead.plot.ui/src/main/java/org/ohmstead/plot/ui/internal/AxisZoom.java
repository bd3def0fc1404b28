// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import org.ohmstead.plot.Scale;

/**
 * Zooming and panning along one axis, within what the axis shows at home: never wider than that, never so narrow that
 * numbers run out of digits. On a log axis all steps are ratios.
 */
public record AxisZoom(Scale scale, double homeLower, double homeUpper) {
    private static final double SMALLEST_SHARE = 1e-7;
    private static final double DIGITS = 1e-10;
    private static final double OVERHANG = 0.1;
    private static final double SAME = 1e-9;

    /** Two ends. */
    public record Span(double lower, double upper) {}

    /** Returns the whole axis. */
    public Span home() {
        return new Span(homeLower, homeUpper);
    }

    /** Returns the span {@code factor} times as narrow, with {@code anchor} staying where it is. */
    public Span zoomed(Span now, double anchor, double factor) {
        double lower = transformed(now.lower());
        double upper = transformed(now.upper());
        double fixed = Math.max(lower, Math.min(upper, transformed(anchor)));
        return clamped(fixed - (fixed - lower) / factor, fixed + (upper - fixed) / factor);
    }

    /** Returns the span moved up by a share of its own length. */
    public Span moved(Span now, double share) {
        double lower = transformed(now.lower());
        double upper = transformed(now.upper());
        double step = share * (upper - lower);
        return clamped(lower + step, upper + step);
    }

    /** Returns the nearest span to the wanted one that is allowed. */
    public Span clamped(Span wanted) {
        return clamped(transformed(wanted.lower()), transformed(wanted.upper()));
    }

    /** Returns whether the span is the whole axis. */
    public boolean isHome(Span span) {
        double length = transformed(homeUpper) - transformed(homeLower);
        return Math.abs(transformed(span.lower()) - transformed(homeLower)) <= SAME * length
                && Math.abs(transformed(span.upper()) - transformed(homeUpper)) <= SAME * length;
    }

    private Span clamped(double wantedLower, double wantedUpper) {
        double lowest = transformed(homeLower);
        double highest = transformed(homeUpper);
        double whole = highest - lowest;
        double narrowest = Math.max(whole * SMALLEST_SHARE, DIGITS * Math.max(Math.abs(lowest), Math.abs(highest)));
        double middle = (wantedLower + wantedUpper) / 2;
        double length = Math.max(narrowest, wantedUpper - wantedLower);
        if (length >= whole * (1 - SAME)) {
            return home();
        }
        double overhang = OVERHANG * length;
        double lower = Math.max(lowest - overhang, Math.min(highest + overhang - length, middle - length / 2));
        return new Span(value(lower), value(lower + length));
    }

    private double transformed(double value) {
        return scale == Scale.LOG ? Math.log(Math.max(Double.MIN_NORMAL, value)) : value;
    }

    private double value(double transformed) {
        return scale == Scale.LOG ? Math.exp(transformed) : transformed;
    }
}
