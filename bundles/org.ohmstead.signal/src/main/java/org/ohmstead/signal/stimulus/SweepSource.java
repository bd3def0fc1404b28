// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/** A sine whose frequency changes by the same number of octaves in each second, with fades of half a cosine. */
final class SweepSource implements SampleSource {
    private final double cyclesAtStart;
    private final double octavesNatural;
    private final double frames;
    private final double fadeInFrames;
    private final double fadeOutFrames;
    private final double peak;

    SweepSource(TestSignal.LogSweep sweep, double sampleRateHz, long frames) {
        this.frames = frames;
        octavesNatural = Math.log(sweep.toHz() / sweep.fromHz());
        cyclesAtStart = sweep.fromHz() * (frames / sampleRateHz) / octavesNatural;
        fadeInFrames = sweep.fadeInSeconds() * sampleRateHz;
        fadeOutFrames = sweep.fadeOutSeconds() * sampleRateHz;
        peak = Levels.ratio(sweep.levelDbfs());
    }

    @Override
    public void fill(long from, double[] block, int count) {
        for (int i = 0; i < count; i++) {
            block[i] = at(from + i);
        }
    }

    private double at(double frame) {
        double cycles = cyclesAtStart * Math.expm1(octavesNatural * frame / frames);
        double sine = Math.sin(2 * Math.PI * (cycles - Math.floor(cycles)));
        return peak * sine * rise(frame / fadeInFrames) * rise((frames - frame) / fadeOutFrames);
    }

    /** From 0 at 0 to 1 at 1 and beyond; a fade of no length is over at once. */
    private static double rise(double share) {
        return share < 1 ? 0.5 - 0.5 * Math.cos(Math.PI * share) : 1;
    }

    /** Mean square of both fades and the plateau over that of the plateau: half a cosine has 3/8. */
    static double meanSquareRatio(TestSignal.LogSweep sweep) {
        return 1 - 0.625 * (sweep.fadeInSeconds() + sweep.fadeOutSeconds()) / sweep.durationSeconds();
    }
}
