// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.OptionalInt;
import org.ohmstead.measure.Feed;

/** A feed as volts at the amplifier's inputs, from the moment it began. */
final class Drive {
    private final double frequencyHz;
    private final double[] voltsPeak;
    private final double onSeconds;
    private final double periodSeconds;
    private final double lowRatio;

    private Drive(double frequencyHz, double[] voltsPeak, double onSeconds, double periodSeconds, double lowRatio) {
        this.frequencyHz = frequencyHz;
        this.voltsPeak = voltsPeak;
        this.onSeconds = onSeconds;
        this.periodSeconds = periodSeconds;
        this.lowRatio = lowRatio;
    }

    /** Makes the drive of a number of channels by a source whose full output is so many volts RMS. */
    static Drive of(Feed feed, int channelCount, double sourceVoltsRms) {
        double fullPeak = sourceVoltsRms * Math.sqrt(2);
        if (feed instanceof Feed.Tone tone) {
            double[] peaks = peaks(fullPeak, tone.driveDb(), tone.channel(), channelCount);
            return new Drive(tone.frequencyHz(), peaks, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 1);
        }
        if (feed instanceof Feed.Burst burst) {
            double[] peaks = peaks(fullPeak, burst.driveDb(), OptionalInt.empty(), channelCount);
            return new Drive(
                    burst.frequencyHz(),
                    peaks,
                    burst.onSeconds(),
                    burst.periodSeconds(),
                    Math.pow(10, burst.lowLevelDb() / 20));
        }
        return new Drive(1000, new double[channelCount], Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 1);
    }

    private static double[] peaks(double fullPeak, double driveDb, OptionalInt only, int channelCount) {
        double[] peaks = new double[channelCount];
        for (int channel = 0; channel < channelCount; channel++) {
            if (only.isEmpty() || only.getAsInt() == channel) {
                peaks[channel] = fullPeak * Math.pow(10, driveDb / 20);
            }
        }
        return peaks;
    }

    double frequencyHz() {
        return frequencyHz;
    }

    boolean silent() {
        for (double peak : voltsPeak) {
            if (peak > 0) {
                return false;
            }
        }
        return true;
    }

    boolean inBursts() {
        return Double.isFinite(periodSeconds);
    }

    /** A stretch over which averages are those of the whole feed: a period of the bursts, or some whole cycles. */
    double repeatSeconds() {
        return inBursts() ? periodSeconds : Math.max(1, Math.ceil(0.004 * frequencyHz)) / frequencyHz;
    }

    double voltsPeak(int channel) {
        return voltsPeak[channel];
    }

    /** The share of the peak volts at a time since the feed began: the level of the burst times the sine. */
    double shareAt(double seconds, double shiftSeconds) {
        double cycles = frequencyHz * (seconds + shiftSeconds);
        double sine = Math.sin(2 * Math.PI * (cycles - Math.floor(cycles)));
        if (!inBursts()) {
            return sine;
        }
        // The small addition keeps a sample on the edge of a burst on the right side of it despite rounding.
        double at = seconds + 1e-12;
        boolean loud = at - periodSeconds * Math.floor(at / periodSeconds) < onSeconds;
        return loud ? sine : sine * lowRatio;
    }
}
