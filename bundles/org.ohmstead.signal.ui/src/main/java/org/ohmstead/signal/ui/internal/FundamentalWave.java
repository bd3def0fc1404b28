// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

/**
 * The fundamental of a tone as a wave of time: dc + peak cos(2 pi f (t - peakAt)).
 *
 * @param frequencyHz above 0
 * @param voltsPeak amplitude
 * @param dcVolts what it swings about
 * @param peakAtSeconds when it has one of its positive peaks, from the first sample of the capture
 */
public record FundamentalWave(double frequencyHz, double voltsPeak, double dcVolts, double peakAtSeconds) {
    double voltsAt(double seconds) {
        return dcVolts + voltsPeak * Math.cos(angleFromPeak(seconds));
    }

    /** Angle from the nearest positive peak in radians, from -pi to pi. */
    double angleFromPeak(double seconds) {
        double cycles = (seconds - peakAtSeconds) * frequencyHz;
        return 2 * Math.PI * (cycles - Math.rint(cycles));
    }

    /** The first upward crossing of its middle at or after a time. */
    double upwardCrossingSeconds(double fromSeconds) {
        double first = peakAtSeconds - 0.25 / frequencyHz;
        return first + Math.ceil((fromSeconds - first) * frequencyHz) / frequencyHz;
    }
}
