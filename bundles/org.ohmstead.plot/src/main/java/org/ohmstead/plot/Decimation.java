// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Thins long records so that they look as the whole would: of every bucket of neighbouring samples the lowest and the
 * highest stay, in their order, so that no peak is lost however narrow it is.
 */
public final class Decimation {
    private Decimation() {}

    /**
     * Returns at most {@code 2 * buckets + 2} of the points: the first, the last, and the lowest and highest of each of
     * {@code buckets} runs of nearly equally many neighbouring samples. Where that would save nothing, all points.
     *
     * @param x places along x, in rising order
     * @param y values, equally many
     * @param buckets how many runs, 1 or more; about one for each pixel of width is enough
     */
    public static List<PlotPoint> envelope(double[] x, double[] y, int buckets) {
        return envelope(x, y, 0, y.length, buckets);
    }

    /**
     * As {@link #envelope(double[], double[], int)}, for the points from index {@code from} up to but without index
     * {@code to}, which are read where they are.
     *
     * @param x places along x, in rising order
     * @param y values, equally many
     * @param from first index, 0 or more
     * @param to index after the last, at most the length of the arrays
     * @param buckets how many runs, 1 or more
     */
    public static List<PlotPoint> envelope(double[] x, double[] y, int from, int to, int buckets) {
        Checks.sameLength("x", x, "y", y);
        return even(index -> x[index], y, from, to, buckets);
    }

    /**
     * As {@link #envelope(double[], double[], int, int, int)}, for samples taken at even distances: sample i lies at
     * {@code firstX + i * stepX}.
     *
     * @param firstX place of the sample with index 0
     * @param stepX distance between two samples, above 0
     * @param y the samples
     * @param from first index, 0 or more
     * @param to index after the last, at most the length of the array
     * @param buckets how many runs, 1 or more
     */
    public static List<PlotPoint> envelope(double firstX, double stepX, double[] y, int from, int to, int buckets) {
        check(firstX, stepX, y.length, from, to, buckets);
        return even(index -> firstX + index * stepX, y, from, to, buckets);
    }

    static void check(double firstX, double stepX, int length, int from, int to, int buckets) {
        Checks.finite("firstX", firstX);
        if (!(stepX > 0) || !Double.isFinite(stepX)) {
            throw new IllegalArgumentException("stepX must be above 0 but is " + stepX + ".");
        }
        check(length, from, to, buckets);
    }

    private static List<PlotPoint> even(IntToDoubleFunction x, double[] y, int from, int to, int buckets) {
        check(y.length, from, to, buckets);
        int count = to - from;
        if (count <= 2L * buckets) {
            return all(x, y, from, to);
        }
        int[] ends = new int[buckets];
        for (int i = 0; i < buckets; i++) {
            ends[i] = from + (int) ((i + 1L) * count / buckets);
        }
        return thin(x, y, from, ends);
    }

    /**
     * As {@link #envelope(double[], double[], int)}, for a log axis: the runs are equally long in the logarithm of x, so
     * that a spectrum keeps its single low bins and has its crowded high ones thinned.
     *
     * @param x places along x, above zero, in rising order
     * @param y values, equally many
     * @param buckets how many runs, 1 or more
     */
    public static List<PlotPoint> logEnvelope(double[] x, double[] y, int buckets) {
        return logEnvelope(x, y, 0, y.length, buckets);
    }

    /**
     * As {@link #logEnvelope(double[], double[], int)}, for the points from index {@code from} up to but without index
     * {@code to}, which are read where they are.
     *
     * @param x places along x, above zero, in rising order
     * @param y values, equally many
     * @param from first index, 0 or more
     * @param to index after the last, at most the length of the arrays
     * @param buckets how many runs, 1 or more
     */
    public static List<PlotPoint> logEnvelope(double[] x, double[] y, int from, int to, int buckets) {
        Checks.sameLength("x", x, "y", y);
        check(y.length, from, to, buckets);
        for (int i = from; i < to; i++) {
            if (!(x[i] > 0) || i > from && x[i] < x[i - 1]) {
                throw new IllegalArgumentException(
                        "x must be above 0 and rising but is " + x[i] + " at index " + i + ".");
            }
        }
        if (to - from <= 2L * buckets) {
            return all(index -> x[index], y, from, to);
        }
        double firstLog = Math.log(x[from]);
        double stepLog = (Math.log(x[to - 1]) - firstLog) / buckets;
        int[] ends = new int[buckets];
        int end = from;
        for (int i = 0; i < buckets - 1; i++) {
            double limitLog = firstLog + (i + 1) * stepLog;
            while (end < to && Math.log(x[end]) < limitLog) {
                end++;
            }
            ends[i] = end;
        }
        ends[buckets - 1] = to;
        return thin(index -> x[index], y, from, ends);
    }

    private static void check(int length, int from, int to, int buckets) {
        if (buckets < 1) {
            throw new IllegalArgumentException("buckets must be 1 or more but is " + buckets + ".");
        }
        if (from < 0 || to > length || from > to) {
            throw new IllegalArgumentException("from and to must be in order and within 0 to " + length
                    + " but they are " + from + " and " + to + ".");
        }
    }

    private static List<PlotPoint> all(IntToDoubleFunction x, double[] y, int from, int to) {
        List<PlotPoint> points = new ArrayList<>(to - from);
        for (int i = from; i < to; i++) {
            points.add(new PlotPoint(x.applyAsDouble(i), y[i]));
        }
        return List.copyOf(points);
    }

    private static List<PlotPoint> thin(IntToDoubleFunction x, double[] y, int from, int[] ends) {
        List<PlotPoint> kept = new ArrayList<>(2 * ends.length + 2);
        int last = from - 1;
        int start = from;
        for (int end : ends) {
            if (end == start) {
                continue;
            }
            int lowest = start;
            int highest = start;
            for (int i = start; i < end; i++) {
                Checks.finite("y", y[i]);
                lowest = y[i] < y[lowest] ? i : lowest;
                highest = y[i] > y[highest] ? i : highest;
            }
            last = keep(kept, x, y, start == from ? from : last, last);
            last = keep(kept, x, y, Math.min(lowest, highest), last);
            last = keep(kept, x, y, Math.max(lowest, highest), last);
            start = end;
        }
        keep(kept, x, y, start - 1, last);
        return List.copyOf(kept);
    }

    private static int keep(List<PlotPoint> kept, IntToDoubleFunction x, double[] y, int index, int last) {
        if (index > last) {
            kept.add(new PlotPoint(x.applyAsDouble(index), y[index]));
            return index;
        }
        return last;
    }
}
