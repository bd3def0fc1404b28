// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.nio.file.Path;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;

/**
 * A capture: a WAV file, or a table of times and volts. What was read is analysed as far as it is short, and written as a WAV file it
 * must be read as the same again.
 */
final class Captures {
    private static final AnalysisSettings SETTINGS = AnalysisSettings.forResistance(4);
    private static final int ANALYSED = 2048;
    private static final double FLOAT_RATIO = 1e-6;
    private static final int MOST_HERTZ = Integer.MAX_VALUE;

    private Captures() {}

    static void read(Path file) {
        Capture capture;
        try {
            capture = CaptureFile.read(file, new double[] {1});
        } catch (CaptureException e) {
            Demand.said(e);
            return;
        }
        Demand.that(capture.size() > 0 && !capture.channels().isEmpty(), "nothing was read");
        Demand.that(capture.sampleRateHz() > 0 && Double.isFinite(capture.sampleRateHz()), "the sample rate");
        for (Waveform channel : capture.channels()) {
            analyse(channel);
        }
        again(capture);
    }

    private static void analyse(Waveform channel) {
        try {
            WaveformAnalyzer.analyze(channel.slice(0, Math.min(ANALYSED, channel.size())), SETTINGS);
        } catch (CaptureException e) {
            Demand.said(e);
        }
    }

    private static void again(Capture capture) {
        boolean whole =
                capture.sampleRateHz() == Math.rint(capture.sampleRateHz()) && capture.sampleRateHz() <= MOST_HERTZ;
        double peakVolts = 0;
        for (Waveform channel : capture.channels()) {
            for (double volts : channel.toArray()) {
                peakVolts = Math.max(peakVolts, Math.abs(volts));
            }
        }
        if (!whole || peakVolts > Float.MAX_VALUE) {
            return;
        }
        Path file = Desk.file("written.wav", new byte[0]);
        double scale = Math.max(1, peakVolts);
        try {
            WavFile.writeFloat(file, capture, new double[] {scale});
            Capture read = WavFile.read(file, new double[] {scale});
            Demand.that(read.channels().size() == capture.channels().size(), "another number of channels");
            Demand.that(read.size() == capture.size() && read.sampleRateHz() == capture.sampleRateHz(), "another size");
            for (int c = 0; c < read.channels().size(); c++) {
                double[] volts = capture.channels().get(c).toArray();
                for (int i = 0; i < volts.length; i++) {
                    Demand.that(
                            Math.abs(read.channels().get(c).voltsAt(i) - volts[i]) <= FLOAT_RATIO * scale,
                            "another sample");
                }
            }
        } catch (CaptureException e) {
            throw new AssertionError("what was read cannot be written and read again", e);
        }
    }
}
