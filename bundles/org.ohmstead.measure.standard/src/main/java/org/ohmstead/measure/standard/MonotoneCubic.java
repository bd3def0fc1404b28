// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

/**
 * A cubic between two neighbouring points of a curve that keeps between them: Hermite form with the slopes of Fritsch and Butland,
 * "A method for constructing local monotone piecewise cubic interpolants", SIAM J. Sci. Stat. Comput. 5 (1984).
 */
final class MonotoneCubic {
    private static final int BISECTIONS = 60;

    private final double[] x;
    private final double[] y;

    /** Takes points with strictly rising x, at least two. */
    MonotoneCubic(double[] x, double[] y) {
        for (int i = 1; i < x.length; i++) {
            if (!(x[i] > x[i - 1])) {
                throw new IllegalArgumentException("x must rise, but x[" + i + "] is " + x[i] + " after " + x[i - 1]);
            }
        }
        this.x = x.clone();
        this.y = y.clone();
    }

    /** Returns the share of the way from point {@code upper - 1} to point {@code upper} at which the curve passes a value between. */
    double shareAt(int upper, double value) {
        double step = x[upper] - x[upper - 1];
        double slopeBelow = slope(upper - 1) * step;
        double slopeAbove = slope(upper) * step;
        double low = 0;
        double high = 1;
        boolean rising = y[upper] > y[upper - 1];
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            boolean below = hermite(y[upper - 1], y[upper], slopeBelow, slopeAbove, middle) < value;
            if (below == rising) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private static double hermite(double from, double to, double slopeFrom, double slopeTo, double t) {
        double u = 1 - t;
        return from * (1 + 2 * t) * u * u + slopeFrom * t * u * u + to * t * t * (3 - 2 * t) - slopeTo * t * t * u;
    }

    private double slope(int i) {
        if (i == 0) {
            return secant(1);
        }
        if (i == x.length - 1) {
            return secant(i);
        }
        double before = secant(i);
        double after = secant(i + 1);
        if (before * after <= 0) {
            return 0;
        }
        double stepBefore = x[i] - x[i - 1];
        double stepAfter = x[i + 1] - x[i];
        double weightBefore = 2 * stepAfter + stepBefore;
        double weightAfter = stepAfter + 2 * stepBefore;
        return (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
    }

    private double secant(int upper) {
        return (y[upper] - y[upper - 1]) / (x[upper] - x[upper - 1]);
    }
}
