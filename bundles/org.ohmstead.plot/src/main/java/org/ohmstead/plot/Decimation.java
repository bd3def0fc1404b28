// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.ArrayList;
import java.util.List;

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
        check(x, y, buckets);
        if (y.length <= 2L * buckets) {
            return Series.of("", x, y, Style.LINE, 0).points();
        }
        int[] ends = new int[buckets];
        for (int i = 0; i < buckets; i++) {
            ends[i] = (int) ((i + 1L) * y.length / buckets);
        }
        return thin(x, y, ends);
    }

    /**
     * As {@link #envelope}, for a log axis: the runs are equally long in the logarithm of x, so that a spectrum keeps
     * its single low bins and has its crowded high ones thinned.
     *
     * @param x places along x, above zero, in rising order
     * @param y values, equally many
     * @param buckets how many runs, 1 or more
     */
    public static List<PlotPoint> logEnvelope(double[] x, double[] y, int buckets) {
        check(x, y, buckets);
        for (int i = 0; i < x.length; i++) {
            if (!(x[i] > 0) || i > 0 && x[i] < x[i - 1]) {
                throw new IllegalArgumentException(
                        "x must be above 0 and rising but is " + x[i] + " at index " + i + ".");
            }
        }
        if (y.length <= 2L * buckets) {
            return Series.of("", x, y, Style.LINE, 0).points();
        }
        double firstLog = Math.log(x[0]);
        double stepLog = (Math.log(x[x.length - 1]) - firstLog) / buckets;
        int[] ends = new int[buckets];
        int end = 0;
        for (int i = 0; i < buckets - 1; i++) {
            double limitLog = firstLog + (i + 1) * stepLog;
            while (end < x.length && Math.log(x[end]) < limitLog) {
                end++;
            }
            ends[i] = end;
        }
        ends[buckets - 1] = x.length;
        return thin(x, y, ends);
    }

    private static void check(double[] x, double[] y, int buckets) {
        Checks.sameLength("x", x, "y", y);
        if (buckets < 1) {
            throw new IllegalArgumentException("buckets must be 1 or more but is " + buckets + ".");
        }
    }

    private static List<PlotPoint> thin(double[] x, double[] y, int[] ends) {
        List<PlotPoint> kept = new ArrayList<>(2 * ends.length + 2);
        int last = -1;
        int start = 0;
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
            last = keep(kept, x, y, start == 0 ? 0 : last, last);
            last = keep(kept, x, y, Math.min(lowest, highest), last);
            last = keep(kept, x, y, Math.max(lowest, highest), last);
            start = end;
        }
        keep(kept, x, y, y.length - 1, last);
        return List.copyOf(kept);
    }

    private static int keep(List<PlotPoint> kept, double[] x, double[] y, int index, int last) {
        if (index > last) {
            kept.add(new PlotPoint(x[index], y[index]));
            return index;
        }
        return last;
    }
}
