// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/** A sine that goes from frequency to frequency, without a phase step. */
final class StepSource implements SampleSource {
    private final int stepFrames;
    private final double[] frequenciesHz;
    private final double[] startRadians;
    private final double sampleRateHz;
    private final double peak;

    StepSource(double sampleRateHz, int stepFrames, double[] frequenciesHz, double peak) {
        this.sampleRateHz = sampleRateHz;
        this.stepFrames = stepFrames;
        this.frequenciesHz = frequenciesHz;
        this.peak = peak;
        startRadians = new double[frequenciesHz.length];
        for (int i = 1; i < frequenciesHz.length; i++) {
            double turns = frequenciesHz[i - 1] * stepFrames / sampleRateHz;
            startRadians[i] = startRadians[i - 1] + 2 * Math.PI * (turns - Math.rint(turns));
        }
    }

    @Override
    public void fill(long from, double[] block, int count) {
        for (int i = 0; i < count; i++) {
            int step = (int) Math.min(frequenciesHz.length - 1L, (from + i) / stepFrames);
            long inside = from + i - (long) step * stepFrames;
            double turns = frequenciesHz[step] * inside / sampleRateHz;
            block[i] = peak * Math.sin(2 * Math.PI * (turns - Math.floor(turns)) + startRadians[step]);
        }
    }
}
