// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Arrays;

/**
 * A temperature under constant powers as a function of time, f(t) = c + sum of a e^(-t/tau), and a bound of its highest
 * value that holds at every moment, not on a grid. On an interval each term is least or greatest at one of its ends, so
 * that f and its derivatives are enclosed by the sums of these; where an enclosure shows that f rises, falls or is
 * convex its highest value is at an end, where it is concave a tangent bounds it, and elsewhere the interval is halved.
 */
final class ExponentialSum {
    private static final int DEEPEST = 60;
    private static final int HALVINGS = 60;
    private static final double FOR_EVER_TAUS = 60;

    private double[] amplitudes = new double[8];
    private double[] rates = new double[8];
    private int count;
    private double constant;
    private double best;

    void reset(double newConstant) {
        constant = newConstant;
        count = 0;
    }

    void add(double amplitude, double tauSeconds) {
        if (amplitude == 0) {
            return;
        }
        if (count == rates.length) {
            amplitudes = Arrays.copyOf(amplitudes, 2 * count);
            rates = Arrays.copyOf(rates, 2 * count);
        }
        amplitudes[count] = amplitude;
        rates[count++] = 1 / tauSeconds;
    }

    double value(double seconds) {
        double sum = constant;
        for (int i = 0; i < count; i++) {
            sum += amplitudes[i] * Math.exp(-seconds * rates[i]);
        }
        return sum;
    }

    /** Returns a value that f does not exceed between 0 and some seconds, and that it reaches but for rounding. */
    double highest(double seconds) {
        best = Math.max(value(0), value(seconds));
        search(0, seconds, DEEPEST);
        return best;
    }

    /** Returns a value that f never exceeds from 0 on, and that it reaches or tends to but for rounding. */
    double highestForEver() {
        double slowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            slowest = Math.min(slowest, rates[i]);
        }
        if (count == 0) {
            return constant;
        }
        double end = FOR_EVER_TAUS / slowest;
        return Math.max(highest(end), constant + enclosure(0, end, Double.POSITIVE_INFINITY, true));
    }

    private void search(double from, double to, int depth) {
        if (constant + enclosure(0, from, to, true) <= best
                || enclosure(1, from, to, true) <= 0
                || enclosure(1, from, to, false) >= 0
                || enclosure(2, from, to, false) >= 0) {
            return;
        }
        if (enclosure(2, from, to, true) <= 0) {
            best = Math.max(best, peak(from, to));
            return;
        }
        if (depth == 0) {
            best = constant + enclosure(0, from, to, true);
            return;
        }
        double middle = from + (to - from) / 2;
        best = Math.max(best, value(middle));
        search(from, middle, depth - 1);
        search(middle, to, depth - 1);
    }

    /**
     * A bound of a concave stretch: between two moments with f rising at the first and falling at the second lies its
     * peak.
     */
    private double peak(double from, double to) {
        double low = from;
        double high = to;
        if (slope(low) <= 0 || slope(high) >= 0) {
            return Math.max(value(low), value(high));
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = low + (high - low) / 2;
            if (slope(middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return value(low) + slope(low) * (high - low);
    }

    private double slope(double seconds) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum -= amplitudes[i] * rates[i] * Math.exp(-seconds * rates[i]);
        }
        return sum;
    }

    /** Returns an upper or lower bound of the derivative of some order, without the constant, over an interval. */
    private double enclosure(int derivative, double from, double to, boolean upper) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            double amplitude = amplitudes[i];
            for (int k = 0; k < derivative; k++) {
                amplitude *= -rates[i];
            }
            sum += amplitude * Math.exp(-rates[i] * (amplitude > 0 == upper ? from : to));
        }
        return sum;
    }
}
