// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jtransforms.fft.DoubleFFT_1D;
import org.visnow.jlargearrays.ConcurrencyUtils;

/**
 * Plans of transforms, kept for the next record of the same length: the tables of a plan take longer to make than the
 * transform of a short record. A plan is lent to one caller at a time, so any thread may ask. A few of moderate length
 * are kept; the one unused for longest goes first.
 */
final class TransformPlans {
    private static final int MOST_PLANS = 8;
    private static final int MOST_KEPT_SIZE = 1 << 17;

    private final Map<Integer, DoubleFFT_1D> idle = new LinkedHashMap<>();

    static {
        // One thread: the workbench has its own jobs, and sums in a fixed order give the same digits on every machine.
        ConcurrencyUtils.setNumberOfThreads(1);
    }

    /** Replaces the samples by their transform, as {@link DoubleFFT_1D#realForward(double[])} stores it. */
    void realForward(double[] samples) {
        int size = samples.length;
        DoubleFFT_1D kept = take(size);
        DoubleFFT_1D plan = kept == null ? new DoubleFFT_1D(size) : kept;
        plan.realForward(samples);
        if (size <= MOST_KEPT_SIZE) {
            giveBack(size, plan);
        }
    }

    private synchronized DoubleFFT_1D take(int size) {
        return idle.remove(size);
    }

    private synchronized void giveBack(int size, DoubleFFT_1D plan) {
        idle.remove(size);
        idle.put(size, plan);
        if (idle.size() > MOST_PLANS) {
            idle.remove(idle.keySet().iterator().next());
        }
    }

    /** Number of plans kept at present. */
    synchronized int size() {
        return idle.size();
    }
}
