// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.List;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;

/** A series ready for looking up what lies at an x. */
public final class Track {
    private final Series series;
    private final double[] x;
    private final boolean rising;

    /** Prepares the series. */
    public Track(Series series) {
        this.series = series;
        List<PlotPoint> points = series.points();
        x = new double[points.size()];
        boolean neverFalls = true;
        for (int i = 0; i < x.length; i++) {
            x[i] = points.get(i).x();
            neverFalls &= i == 0 || x[i] >= x[i - 1];
        }
        rising = neverFalls;
    }

    /** Returns the series. */
    public Series series() {
        return series;
    }

    /** Returns whether x never falls from one point to the next. */
    public boolean rising() {
        return rising;
    }

    /** Returns the index of the last point at or before {@code place}, -1 if none; only for a rising track. */
    public int lastAtOrBefore(double place) {
        int low = 0;
        int high = x.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (x[middle] <= place) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low - 1;
    }

    /** Returns the index of the point nearest in x, -1 if there is none. */
    public int nearest(double place) {
        if (!rising) {
            int best = -1;
            for (int i = 0; i < x.length; i++) {
                best = best < 0 || Math.abs(x[i] - place) < Math.abs(x[best] - place) ? i : best;
            }
            return best;
        }
        int before = lastAtOrBefore(place);
        if (before < 0) {
            return x.length == 0 ? -1 : 0;
        }
        if (before == x.length - 1) {
            return before;
        }
        return x[before + 1] - place < place - x[before] ? before + 1 : before;
    }

    /** Returns how many points there are. */
    public int size() {
        return x.length;
    }

    /** Returns the x of the point. */
    public double x(int index) {
        return x[index];
    }
}
