// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

/**
 * Bounds of one parameter, kept by a change of variable: the search moves an unbounded inner variable t. Between two
 * bounds the parameter is lower + (upper-lower)(1 + sin t)/2, beyond one bound it is bound +- (sqrt(t² + 1) - 1).
 *
 * @param lower the lower bound, may be minus infinity
 * @param upper the upper bound, may be plus infinity, above the lower one
 */
public record Bounds(double lower, double upper) {

    /** No bounds. */
    public static final Bounds NONE = new Bounds(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

    private static final double ON_BOUND = 1e-10;

    /** Checks the order. */
    public Bounds {
        if (!(lower < upper)) {
            throw new IllegalArgumentException("lower is " + lower + " but must be below upper, " + upper + ".");
        }
    }

    /** Returns whether the parameter lies strictly between the bounds. */
    public boolean strictlyWithin(double parameter) {
        return parameter > lower && parameter < upper;
    }

    /** Returns the inner variable for a parameter strictly within the bounds. */
    public double inner(double parameter) {
        if (hasLower() && hasUpper()) {
            return Math.asin(2 * (parameter - lower) / (upper - lower) - 1);
        }
        if (hasLower() || hasUpper()) {
            double distance = hasLower() ? parameter - lower : upper - parameter;
            return Math.sqrt(distance * (distance + 2));
        }
        return parameter;
    }

    /** Returns the parameter for the inner variable. */
    public double outer(double inner) {
        if (hasLower() && hasUpper()) {
            return lower + (upper - lower) * (1 + Math.sin(inner)) / 2;
        }
        if (hasLower()) {
            return lower + inner * inner / (Math.sqrt(inner * inner + 1) + 1);
        }
        if (hasUpper()) {
            return upper - inner * inner / (Math.sqrt(inner * inner + 1) + 1);
        }
        return inner;
    }

    /** Returns d(parameter)/d(inner variable). */
    public double slope(double inner) {
        if (hasLower() && hasUpper()) {
            return (upper - lower) * Math.cos(inner) / 2;
        }
        if (hasLower() || hasUpper()) {
            double slope = inner / Math.sqrt(inner * inner + 1);
            return hasLower() ? slope : -slope;
        }
        return 1;
    }

    /** Returns whether a parameter found by the search lies on a bound, within rounding. */
    public boolean onBound(double parameter) {
        double scale = hasLower() && hasUpper() ? upper - lower : Math.max(1, Math.abs(parameter));
        return hasLower() && parameter - lower <= ON_BOUND * scale
                || hasUpper() && upper - parameter <= ON_BOUND * scale;
    }

    private boolean hasLower() {
        return Double.isFinite(lower);
    }

    private boolean hasUpper() {
        return Double.isFinite(upper);
    }
}
