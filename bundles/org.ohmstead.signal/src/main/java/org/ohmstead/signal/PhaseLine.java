// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.List;

/**
 * The frequency of a tone from its phase in one segment after the other: the slope of a straight line through the phases,
 * which over a long record is as sharp as a fit of the whole. The frequencies found in the segments say how many
 * whole cycles lie between them.
 */
final class PhaseLine {
    private static final double BREAK_RADIANS = 1;

    private PhaseLine() {}

    /** The slope in radians per sample, over the longest run without a break. */
    static double radiansPerSample(List<ToneSegment> segments, List<ToneSegment.Place> places) {
        int bestFrom = 0;
        int bestTo = 0;
        int from = 0;
        for (int i = 0; i <= segments.size(); i++) {
            boolean steady = i < segments.size() && places.get(i) == ToneSegment.Place.STEADY;
            if (steady && i > from && !joins(segments.get(i - 1), segments.get(i))) {
                // A phase that jumps ends a run as a pause does.
                if (i - from > bestTo - bestFrom) {
                    bestFrom = from;
                    bestTo = i;
                }
                from = i;
            }
            if (!steady) {
                if (i - from > bestTo - bestFrom) {
                    bestFrom = from;
                    bestTo = i;
                }
                from = i + 1;
            }
        }
        return slope(segments.subList(bestFrom, bestTo));
    }

    private static double expected(ToneSegment first, ToneSegment second) {
        return 0.5 * (first.radiansPerSample() + second.radiansPerSample()) * (second.centre() - first.centre());
    }

    /** How far the phase is from where the two frequencies lead to. */
    private static double surplus(ToneSegment first, ToneSegment second) {
        return Math.IEEEremainder(second.phaseRadians() - first.phaseRadians() - expected(first, second), 2 * Math.PI);
    }

    private static boolean joins(ToneSegment first, ToneSegment second) {
        return Math.abs(surplus(first, second)) < BREAK_RADIANS;
    }

    /** The line's slope. The mean frequency is taken off first, so that the digits go to the rest. */
    private static double slope(List<ToneSegment> run) {
        double mean = 0;
        double middle = 0;
        for (ToneSegment segment : run) {
            mean += segment.radiansPerSample() / run.size();
            middle += segment.centre() / run.size();
        }
        double rest = 0;
        double square = 0;
        double product = 0;
        for (int i = 0; i < run.size(); i++) {
            if (i > 0) {
                ToneSegment before = run.get(i - 1);
                ToneSegment here = run.get(i);
                rest += surplus(before, here) + expected(before, here) - mean * (here.centre() - before.centre());
            }
            double distance = run.get(i).centre() - middle;
            square += distance * distance;
            product += distance * rest;
        }
        return square > 0 ? mean + product / square : mean;
    }
}
