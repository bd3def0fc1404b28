// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import org.ohmstead.signal.Waveforms.BurstPattern;

/** A sine that is loud and low in turns. */
final class BurstSource implements SampleSource {
    private final ToneSource tone;
    private final BurstPattern pattern;
    private final double sampleRateHz;

    BurstSource(ToneSource tone, BurstPattern pattern, double sampleRateHz) {
        this.tone = tone;
        this.pattern = pattern;
        this.sampleRateHz = sampleRateHz;
    }

    @Override
    public void fill(long from, double[] block, int count) {
        tone.fill(from, block, count);
        for (int i = 0; i < count; i++) {
            if (!pattern.isOn((from + i) / sampleRateHz)) {
                block[i] *= pattern.lowRatio();
            }
        }
    }
}
