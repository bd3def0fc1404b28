// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/** Times of the same work, in seconds. */
public final class Times {
    private double[] sorted = {};

    /** Adds some. */
    public void add(double... seconds) {
        sorted = DoubleStream.concat(Arrays.stream(sorted), Arrays.stream(seconds))
                .sorted()
                .toArray();
    }

    /** Returns how many there are. */
    public int count() {
        return sorted.length;
    }

    /** Returns the shortest. */
    public double best() {
        return sorted[0];
    }

    /** Returns the middle one, or the mean of the two in the middle. */
    public double median() {
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
    }
}
