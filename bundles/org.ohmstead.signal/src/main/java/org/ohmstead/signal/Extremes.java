// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * What one look at samples tells.
 *
 * @param low the lowest of them
 * @param high the highest
 */
record Extremes(double low, double high) {
    static Extremes of(double[] samples) {
        double low = samples[0];
        double high = samples[0];
        for (double sample : samples) {
            if (sample < low) {
                low = sample;
            } else if (sample > high) {
                high = sample;
            }
        }
        return new Extremes(low, high);
    }

    double largest() {
        return Math.max(Math.abs(low), Math.abs(high));
    }
}
