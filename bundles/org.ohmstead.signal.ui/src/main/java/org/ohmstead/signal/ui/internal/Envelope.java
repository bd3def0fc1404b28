// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.signal.ExtremaPyramid;

/** The points that stand for a stretch of values in a plot: of every run the lowest and the highest. */
final class Envelope {
    private final ExtremaPyramid values;
    private final IntToDoubleFunction place;
    private final double lift;
    private final List<PlotPoint> points = new ArrayList<>();
    private int last = -1;

    private Envelope(ExtremaPyramid values, IntToDoubleFunction place, double lift) {
        this.values = values;
        this.place = place;
        this.lift = lift;
    }

    /**
     * Returns at most two points for each run, in rising order.
     *
     * @param ends where each run ends, rising; the first begins at {@code from}
     * @param place the place of an index along x
     * @param lift added to each value
     */
    static List<PlotPoint> of(ExtremaPyramid values, int from, int[] ends, IntToDoubleFunction place, double lift) {
        Envelope envelope = new Envelope(values, place, lift);
        int start = from;
        for (int end : ends) {
            if (end > start) {
                int lowest = values.lowestIn(start, end);
                int highest = values.highestIn(start, end);
                envelope.add(Math.min(lowest, highest));
                envelope.add(Math.max(lowest, highest));
                start = end;
            }
        }
        return envelope.points;
    }

    /** Returns one point for each value. */
    static List<PlotPoint> all(ExtremaPyramid values, int from, int to, IntToDoubleFunction place, double lift) {
        Envelope envelope = new Envelope(values, place, lift);
        for (int i = from; i < to; i++) {
            envelope.add(i);
        }
        return envelope.points;
    }

    private void add(int index) {
        if (index > last) {
            points.add(new PlotPoint(place.applyAsDouble(index), values.valueAt(index) + lift));
            last = index;
        }
    }
}
