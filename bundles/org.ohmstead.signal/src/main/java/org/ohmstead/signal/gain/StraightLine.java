// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

/** Straight lines by least squares, closed form. */
final class StraightLine {
    private final double slope;
    private final double slopeUncertainty;

    private StraightLine(double slope, double slopeUncertainty) {
        this.slope = slope;
        this.slopeUncertainty = slopeUncertainty;
    }

    /**
     * Returns y = slope x with weights: slope = sum(w x y) / sum(w x x); the scatter about it over n - 1 sets its uncertainty.
     *
     * @param x at least two
     */
    static StraightLine throughOrigin(double[] x, double[] y, double[] weights) {
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < x.length; i++) {
            xx += weights[i] * x[i] * x[i];
            xy += weights[i] * x[i] * y[i];
        }
        double slope = xy / xx;
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            double residual = y[i] - slope * x[i];
            squares += weights[i] * residual * residual;
        }
        return new StraightLine(slope, Math.sqrt(squares / (x.length - 1) / xx));
    }

    /**
     * Returns y = intercept + slope x; the scatter about it over n - 2 sets the slope's uncertainty.
     *
     * @param x at least three, not all the same
     */
    static StraightLine free(double[] x, double[] y) {
        double meanX = mean(x);
        double meanY = mean(y);
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < x.length; i++) {
            xx += (x[i] - meanX) * (x[i] - meanX);
            xy += (x[i] - meanX) * (y[i] - meanY);
        }
        double slope = xy / xx;
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            double residual = y[i] - meanY - slope * (x[i] - meanX);
            squares += residual * residual;
        }
        return new StraightLine(slope, Math.sqrt(squares / (x.length - 2) / xx));
    }

    double slope() {
        return slope;
    }

    double slopeUncertainty() {
        return slopeUncertainty;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
