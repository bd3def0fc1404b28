// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.List;

/**
 * A recorded set of channels that were sampled together: same rate, same length.
 *
 * @param channels one waveform per channel, at least one
 * @param sourceName where the samples came from, such as a file name
 * @param formatText how they were stored, such as "WAV 24-bit integer, 2 channels, 48000 Hz"
 */
public record Capture(List<Waveform> channels, String sourceName, String formatText) {
    /** Checks that there is a channel and that all have the same rate and length. */
    public Capture {
        channels = List.copyOf(channels);
        if (channels.isEmpty()) {
            throw new IllegalArgumentException("channels must hold at least one waveform, but is empty");
        }
        Waveform first = channels.get(0);
        for (Waveform channel : channels) {
            if (channel.size() != first.size() || Double.compare(channel.sampleRateHz(), first.sampleRateHz()) != 0) {
                throw new IllegalArgumentException(
                        "channels must all have the same rate and length, but are " + channels);
            }
        }
        if (sourceName == null || formatText == null) {
            throw new IllegalArgumentException("sourceName and formatText must be given, but one is null");
        }
    }

    /** Returns the sample rate that all channels share, in hertz. */
    public double sampleRateHz() {
        return channels.get(0).sampleRateHz();
    }

    /** Returns the number of sample instants, the same for each channel. */
    public int size() {
        return channels.get(0).size();
    }
}
