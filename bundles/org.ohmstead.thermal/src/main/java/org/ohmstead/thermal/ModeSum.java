// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A temperature rise while the powers do not change: a constant and a sum of decaying exponentials. Such a sum may turn several times, at
 * most as often as the signs of its terms change when they are sorted by speed (the rule of Descartes for sums of exponentials). Its zeros
 * are found without sampling: the slowest term is divided out and differentiated away (Rolle), until one term is left; between the zeros of
 * the simpler sum the fuller one is monotone.
 */
final class ModeSum {
    /** After this many of the slowest time constants nothing is left of any term in double precision. */
    private static final double FOREVER = 800;

    private final double constant;
    private final double[] rates;
    private final double[] amplitudes;

    private ModeSum(double constant, double[] rates, double[] amplitudes) {
        this.constant = constant;
        this.rates = rates;
        this.amplitudes = amplitudes;
    }

    /** Returns the sum for terms in any order; terms of zero are dropped and those of one speed are put together. */
    static ModeSum of(double constant, double[] tauSeconds, double[] amplitudes) {
        Integer[] order = new Integer[tauSeconds.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble(i -> -tauSeconds[i]));
        double[] rates = new double[order.length];
        double[] sorted = new double[order.length];
        int count = 0;
        for (int i : order) {
            double rate = 1 / tauSeconds[i];
            if (count > 0 && rates[count - 1] == rate) {
                sorted[count - 1] += amplitudes[i];
            } else if (amplitudes[i] != 0) {
                rates[count] = rate;
                sorted[count] = amplitudes[i];
                count++;
            }
        }
        return new ModeSum(constant, Arrays.copyOf(rates, count), Arrays.copyOf(sorted, count));
    }

    double at(double seconds) {
        double sum = constant;
        for (int i = 0; i < rates.length; i++) {
            sum += amplitudes[i] * Math.exp(-rates[i] * seconds);
        }
        return sum;
    }

    /** Returns the value for ever. */
    double settled() {
        return constant;
    }

    /** Returns the time within 0 to {@code seconds} (may be infinite) at which the sum is highest; the earliest of equals. */
    double highestAt(double seconds) {
        double end = finite(seconds);
        double best = 0;
        double highest = at(0);
        for (double turn : turns(end)) {
            double value = at(turn);
            if (value > highest) {
                highest = value;
                best = turn;
            }
        }
        return at(end) > highest ? end : best;
    }

    /** Returns the first time from 0 on at which the sum is at or above a level; empty when it never is. */
    OptionalDouble firstAtOrAbove(double level) {
        return first(level, 1);
    }

    /** Returns the first time from 0 on at which the sum is at or below a level; empty when it never is. */
    OptionalDouble firstAtOrBelow(double level) {
        return first(level, -1);
    }

    private OptionalDouble first(double level, int side) {
        if (side * (at(0) - level) >= 0) {
            return OptionalDouble.of(0);
        }
        double end = finite(Double.POSITIVE_INFINITY);
        double from = 0;
        for (double turn : turns(end)) {
            if (side * (at(turn) - level) >= 0) {
                return OptionalDouble.of(crossing(from, turn, level, side));
            }
            from = turn;
        }
        // A sum that comes nearer for ever without getting there is said not to get there.
        if (side * (constant - level) > 0) {
            return OptionalDouble.of(crossing(from, end, level, side));
        }
        return OptionalDouble.empty();
    }

    private double crossing(double before, double after, double level, int side) {
        double low = before;
        double high = after;
        while (true) {
            double middle = between(low, high);
            if (middle <= low || middle >= high) {
                return high;
            }
            if (side * (at(middle) - level) >= 0) {
                high = middle;
            } else {
                low = middle;
            }
        }
    }

    private double finite(double seconds) {
        return rates.length == 0 ? Math.min(seconds, 1) : Math.min(seconds, FOREVER / rates[0]);
    }

    /** Returns the times strictly within 0 to {@code end} at which the sum turns, in order. */
    private List<Double> turns(double end) {
        double[] slopes = new double[rates.length];
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] = -amplitudes[i] * rates[i];
        }
        return zeros(rates, slopes, end);
    }

    /** Returns the zeros of a sum of exponentials, slowest first, strictly within 0 to {@code end}. */
    private static List<Double> zeros(double[] rates, double[] terms, double end) {
        if (!signsDiffer(terms)) {
            return List.of();
        }
        double[] faster = new double[rates.length - 1];
        double[] slopes = new double[rates.length - 1];
        for (int i = 1; i < rates.length; i++) {
            faster[i - 1] = rates[i] - rates[0];
            slopes[i - 1] = -terms[i] * faster[i - 1];
        }
        List<Double> bounds = new ArrayList<>(zeros(faster, slopes, end));
        bounds.add(end);
        List<Double> found = new ArrayList<>();
        double from = 0;
        for (double to : bounds) {
            double before = divided(rates, terms, from);
            double after = divided(rates, terms, to);
            if (before < 0 && after > 0 || before > 0 && after < 0) {
                found.add(signChange(rates, terms, from, to, before > 0));
            } else if (after == 0 && to < end) {
                found.add(to);
            }
            from = to;
        }
        return found;
    }

    private static double signChange(double[] rates, double[] terms, double from, double to, boolean falling) {
        double low = from;
        double high = to;
        while (true) {
            double middle = between(low, high);
            if (middle <= low || middle >= high) {
                return high;
            }
            if (divided(rates, terms, middle) > 0 == falling) {
                low = middle;
            } else {
                high = middle;
            }
        }
    }

    /** Returns the middle; far from 0 the geometric one, so that times of all sizes are found in as few steps. */
    private static double between(double low, double high) {
        return low > 0 && high > 4 * low ? Math.sqrt(low) * Math.sqrt(high) : low + (high - low) / 2;
    }

    /** Returns the sum over its slowest term, which has the same zeros and does not fade away. */
    private static double divided(double[] rates, double[] terms, double seconds) {
        double sum = 0;
        for (int i = 0; i < rates.length; i++) {
            sum += terms[i] * Math.exp(-(rates[i] - rates[0]) * seconds);
        }
        return sum;
    }

    private static boolean signsDiffer(double[] terms) {
        boolean above = false;
        boolean below = false;
        for (double term : terms) {
            above |= term > 0;
            below |= term < 0;
        }
        return above && below;
    }
}
