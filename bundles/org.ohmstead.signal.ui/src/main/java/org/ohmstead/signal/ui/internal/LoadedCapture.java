// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.List;

/**
 * A capture that was read and analysed, ready to be drawn at any zoom.
 *
 * @param order what was asked for
 * @param formatText how its samples were stored
 * @param channels at least one
 */
public record LoadedCapture(CaptureOrder order, String formatText, List<LoadedChannel> channels) {
    private static final double SECONDS_FROM_HERE_ON = 1;

    public LoadedCapture {
        channels = List.copyOf(channels);
    }

    double sampleRateHz() {
        return channels.get(0).waveform().sampleRateHz();
    }

    int size() {
        return channels.get(0).waveform().size();
    }

    double durationSeconds() {
        return channels.get(0).waveform().durationSeconds();
    }

    /** Units of the time axis in one second: milliseconds for short captures, seconds for long ones. */
    double timeUnitsPerSecond() {
        return durationSeconds() <= SECONDS_FROM_HERE_ON ? 1000 : 1;
    }

    String timeUnit() {
        return timeUnitsPerSecond() > 1 ? "ms" : "s";
    }
}
