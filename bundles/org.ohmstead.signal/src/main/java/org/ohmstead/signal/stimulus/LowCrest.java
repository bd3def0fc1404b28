// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.Random;

/**
 * Phases of tones that keep their peak low: Schroeder's, which are good for evenly spaced tones, or random ones where those are better. The same
 * tones always get the same phases.
 */
final class LowCrest {
    private static final int MOST_FRAMES = 1 << 16;
    private static final int MOST_TRIES = 64;
    /** Tries times tones, so that many tones take no longer than few. */
    private static final int WORK = 1024;

    private final double sampleRateHz;
    private final double[] frequenciesHz;
    private final double[] peaks;
    private final int frames;

    LowCrest(double sampleRateHz, double[] frequenciesHz, double[] peaks, long frames) {
        this.sampleRateHz = sampleRateHz;
        this.frequenciesHz = frequenciesHz;
        this.peaks = peaks;
        this.frames = (int) Math.min(frames, MOST_FRAMES);
    }

    /** Returns the tones with phases; the shares of the power add up to one. */
    ToneSource source(double[] shares) {
        ToneSource best = with(schroeder(shares));
        double lowest = peak(best, frames);
        Random random = new Random(1);
        int tries = Math.min(MOST_TRIES, WORK / peaks.length);
        for (int i = 0; i < tries && peaks.length > 1; i++) {
            double[] phases = random.doubles(peaks.length, 0, 2 * Math.PI).toArray();
            ToneSource candidate = with(phases);
            double peak = peak(candidate, frames);
            if (peak < lowest) {
                lowest = peak;
                best = candidate;
            }
        }
        return best;
    }

    private ToneSource with(double[] phases) {
        return new ToneSource(sampleRateHz, frequenciesHz, peaks, phases);
    }

    private static double[] schroeder(double[] shares) {
        double[] phases = new double[shares.length];
        for (int i = 0; i < phases.length; i++) {
            // The formula is for cosines.
            phases[i] = phases.length > 1 ? 0.5 * Math.PI : 0;
            for (int l = 0; l < i; l++) {
                phases[i] -= 2 * Math.PI * (i - l) * shares[l];
            }
        }
        return phases;
    }

    static double peak(SampleSource source, int frames) {
        double[] samples = new double[frames];
        source.fill(0, samples, frames);
        double peak = 0;
        for (double sample : samples) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return peak;
    }
}
