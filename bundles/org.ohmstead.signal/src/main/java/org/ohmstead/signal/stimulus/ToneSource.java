// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.Arrays;
import org.ohmstead.signal.Waveforms;

/**
 * Sines at once. Each runs on by turning a pointer, and is set anew from its phase at places that are the same wherever the block begins, so that
 * the samples do not depend on the blocks and the error of the turning stays below 1e-12.
 */
final class ToneSource implements SampleSource {
    private static final int STRETCH = 1024;

    private final double sampleRateHz;
    private final double[] frequenciesHz;
    private final double[] peaks;
    private final double[] phases;

    ToneSource(double sampleRateHz, double[] frequenciesHz, double[] peaks, double[] phases) {
        this.sampleRateHz = sampleRateHz;
        this.frequenciesHz = frequenciesHz;
        this.peaks = peaks;
        this.phases = phases;
    }

    static ToneSource single(double sampleRateHz, double frequencyHz, double peak) {
        return new ToneSource(sampleRateHz, new double[] {frequencyHz}, new double[] {peak}, new double[1]);
    }

    @Override
    public void fill(long from, double[] block, int count) {
        Arrays.fill(block, 0, count, 0);
        for (int tone = 0; tone < peaks.length; tone++) {
            int done = 0;
            while (done < count) {
                long at = from + done;
                int skipped = (int) (at % STRETCH);
                int piece = Math.min(count - done, STRETCH - skipped);
                add(tone, at - skipped, skipped, block, done, piece);
                done += piece;
            }
        }
    }

    private void add(int tone, long start, int skipped, double[] block, int place, int count) {
        double angle = Waveforms.phaseRadians(frequenciesHz[tone], start, sampleRateHz) + phases[tone];
        double step = 2 * Math.PI * frequenciesHz[tone] / sampleRateHz;
        double cosine = Math.cos(step);
        double sine = Math.sin(step);
        double x = Math.cos(angle) * peaks[tone];
        double y = Math.sin(angle) * peaks[tone];
        for (int i = 0; i < skipped + count; i++) {
            if (i >= skipped) {
                block[place + i - skipped] += y;
            }
            double next = x * cosine - y * sine;
            y = x * sine + y * cosine;
            x = next;
        }
    }
}
