// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
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

    /**
     * Returns the SHA-256, in lower-case hexadecimal digits, of what was recorded, however it is stored: of each channel the sample rate in
     * hertz and then all samples in volts, as doubles, most significant byte first.
     */
    public String contentSha256() {
        MessageDigest digest;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform has SHA-256", missing);
        }
        for (Waveform channel : channels) {
            ByteBuffer bytes = ByteBuffer.allocate(Double.BYTES * (channel.size() + 1));
            bytes.putDouble(channel.sampleRateHz());
            for (int i = 0; i < channel.size(); i++) {
                bytes.putDouble(channel.voltsAt(i));
            }
            digest.update(bytes.array());
        }
        return HexFormat.of().formatHex(digest.digest());
    }
}
