// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import org.ohmstead.measure.Acquisition;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.Waveform;

/** How loud recordings are. */
public final class Loudness {
    private Loudness() {}

    /** Returns the largest RMS of all channels, without their direct volts. */
    public static double voltsRms(Capture capture) {
        return capture.channels().stream().mapToDouble(Loudness::voltsRms).max().orElseThrow();
    }

    private static double voltsRms(Waveform waveform) {
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < waveform.size(); i++) {
            sum += waveform.voltsAt(i);
            squares += waveform.voltsAt(i) * waveform.voltsAt(i);
        }
        double mean = sum / waveform.size();
        return Math.sqrt(Math.max(0, squares / waveform.size() - mean * mean));
    }

    /** Returns the largest share of its range that any channel takes up. */
    public static double rangeShare(Acquisition acquisition) {
        double share = 0;
        for (int channel = 0; channel < acquisition.output().channels().size(); channel++) {
            for (double each : acquisition.output().channels().get(channel).toArray()) {
                share = Math.max(
                        share, Math.abs(each) / acquisition.voltsPerFullScale().get(channel));
            }
        }
        return share;
    }
}
