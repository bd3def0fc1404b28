// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.nio.file.Path;
import java.util.List;

/** Writes a capture as one WAV file. */
final class WavWriter {
    private static final int BLOCK_FRAMES = 4096;

    private WavWriter() {}

    static void write(Path file, Capture capture, WavFormat format, double[] voltsPerFullScale)
            throws CaptureException {
        double[] scales = WavFile.scalesFor(file, capture.channels().size(), voltsPerFullScale);
        long rate = Math.round(capture.sampleRateHz());
        if (rate < 1 || rate > Integer.MAX_VALUE || Math.abs(rate - capture.sampleRateHz()) > 1e-9 * rate) {
            throw new CaptureException(
                    Texts.said("wav.fractionalRate", file.getFileName(), Double.toString(capture.sampleRateHz())));
        }
        if (!format.floating()) {
            requireRoom(file, capture, format, scales);
        }
        try (WavStream stream = WavStream.open(file, (int) rate, scales.length, format, capture.size())) {
            writeSamples(stream, capture.channels(), scales);
            stream.finish();
        }
    }

    private static void requireRoom(Path file, Capture capture, WavFormat format, double[] scales)
            throws CaptureException {
        double most = format.fullScale() - 1;
        for (int c = 0; c < scales.length; c++) {
            double[] samples = capture.channels().get(c).raw();
            for (int i = 0; i < samples.length; i++) {
                double whole = Math.rint(samples[i] / scales[c] * format.fullScale());
                if (whole > most || whole < -most - 1) {
                    throw new CaptureException(Texts.said(
                            "wav.beyond",
                            file.getFileName(),
                            format.text(),
                            i + 1,
                            c + 1,
                            Digits.of(samples[i], 6),
                            Digits.of(scales[c], 6)));
                }
            }
        }
    }

    private static void writeSamples(WavStream stream, List<Waveform> channels, double[] scales)
            throws CaptureException {
        int frames = channels.get(0).size();
        double[][] block = new double[scales.length][BLOCK_FRAMES];
        for (int from = 0; from < frames; from += BLOCK_FRAMES) {
            int count = Math.min(BLOCK_FRAMES, frames - from);
            for (int c = 0; c < scales.length; c++) {
                double[] samples = channels.get(c).raw();
                for (int i = 0; i < count; i++) {
                    block[c][i] = samples[from + i] / scales[c];
                }
            }
            stream.write(block, count);
        }
    }
}
