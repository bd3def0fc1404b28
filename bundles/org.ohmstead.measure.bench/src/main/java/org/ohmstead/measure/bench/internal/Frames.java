// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import org.ohmstead.signal.Waveform;

/** Whole-number samples of a sound card, least significant byte first, channels side by side. */
final class Frames {
    private Frames() {}

    /** Makes frames of shares of full scale: each channel's samples, of the same length. */
    static byte[] of(double[][] shares, AudioFormat format) {
        int width = format.getSampleSizeInBits() / 8;
        int channels = format.getChannels();
        double full = Math.pow(2, format.getSampleSizeInBits() - 1);
        byte[] frames = new byte[shares[0].length * channels * width];
        int at = 0;
        for (int i = 0; i < shares[0].length; i++) {
            for (int channel = 0; channel < channels; channel++) {
                double share = channel < shares.length ? shares[channel][i] : 0;
                int value = (int) Math.max(-full, Math.min(full - 1, Math.rint(share * full)));
                for (int octet = 0; octet < width; octet++) {
                    frames[at] = (byte) (value >> 8 * octet);
                    at++;
                }
            }
        }
        return frames;
    }

    /** Makes waveforms in volts of frames. */
    static List<Waveform> waveforms(byte[] frames, AudioFormat format, int wanted, double[] voltsPerFullScale) {
        int width = format.getSampleSizeInBits() / 8;
        int size = frames.length / (width * format.getChannels());
        double full = Math.pow(2, format.getSampleSizeInBits() - 1);
        List<Waveform> waveforms = new ArrayList<>();
        for (int channel = 0; channel < wanted; channel++) {
            double[] samples = new double[size];
            for (int i = 0; i < size; i++) {
                int from = (i * format.getChannels() + channel) * width;
                // The highest byte carries the sign.
                int value = frames[from + width - 1];
                for (int octet = width - 2; octet >= 0; octet--) {
                    value = value << 8 | frames[from + octet] & 0xff;
                }
                samples[i] = value / full * voltsPerFullScale[channel];
            }
            waveforms.add(Waveform.of(format.getSampleRate(), samples));
        }
        return waveforms;
    }
}
