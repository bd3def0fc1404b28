// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

/**
 * Readings as plain arrays, for fits that are repeated many times. Not changed after it is made.
 *
 * @param supplyVolts at the terminals
 * @param channelOhms the load that one channel sees
 * @param channels how many channels share the power, 1 or 2
 * @param powerWatts of the whole load
 * @param standardUncertaintyWatts of each power, above 0
 * @param progress how far each reading had warmed up, from 0; all 0 when that is not known
 */
public record StageData(
        double[] supplyVolts,
        double[] channelOhms,
        double[] channels,
        double[] powerWatts,
        double[] standardUncertaintyWatts,
        double[] progress) {

    /** Returns the number of readings. */
    public int size() {
        return supplyVolts.length;
    }

    /** Returns the peak volts of each reading, sqrt(2rP/n). */
    public double[] peakVolts() {
        double[] peaks = new double[size()];
        for (int i = 0; i < peaks.length; i++) {
            peaks[i] = Math.sqrt(2 * channelOhms[i] * powerWatts[i] / channels[i]);
        }
        return peaks;
    }

    /** Returns the same readings without one of them. */
    public StageData without(int index) {
        return new StageData(
                cut(supplyVolts, index),
                cut(channelOhms, index),
                cut(channels, index),
                cut(powerWatts, index),
                cut(standardUncertaintyWatts, index),
                cut(progress, index));
    }

    private static double[] cut(double[] values, int index) {
        double[] rest = new double[values.length - 1];
        System.arraycopy(values, 0, rest, 0, index);
        System.arraycopy(values, index + 1, rest, index, rest.length - index);
        return rest;
    }
}
