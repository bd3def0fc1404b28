// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.Random;
import org.jtransforms.fft.DoubleFFT_1D;
import org.visnow.jlargearrays.ConcurrencyUtils;

/** Pink noise of one period, over and over. */
final class NoiseSource implements SampleSource {
    /** Long enough for a hundred lines below 40 Hz, short enough to be made while one waits. */
    static final int LONGEST_PERIOD = 1 << 18;

    private static final int MOST_TURNS = 400;
    /** Cutting a little deeper than wanted gets there in fewer turns. */
    private static final double DEEPER = 0.97;

    private static final double NEAR_ENOUGH = 1.004;

    private final double[] period;
    private final double peak;

    static {
        ConcurrencyUtils.setNumberOfThreads(1);
    }

    private NoiseSource(double[] period, double peak) {
        this.period = period;
        this.peak = peak;
    }

    /**
     * Makes noise.
     *
     * @param periodFrames after how many samples it repeats; even
     */
    static NoiseSource of(TestSignal.PinkNoise noise, double sampleRateHz, int periodFrames) {
        double[] heights = heights(noise, sampleRateHz, periodFrames);
        double[] samples = randomPhases(heights, noise.seed());
        DoubleFFT_1D transform = new DoubleFFT_1D(periodFrames);
        transform.realInverse(samples, true);
        double rms = rms(samples);
        double wanted = Levels.ratio(noise.crestFactorDb()) * rms;
        double deeper = DEEPER;
        for (int turn = 0; turn < MOST_TURNS && peak(samples) > NEAR_ENOUGH * wanted; turn++) {
            double[] before = samples.clone();
            cut(samples, deeper * wanted);
            transform.realForward(samples);
            straighten(samples, heights);
            transform.realInverse(samples, true);
            if (peak(samples) < wanted) {
                // Too deep: the crest factor is to be reached, not undercut.
                samples = before;
                deeper = 1 - 0.5 * (1 - deeper);
            }
        }
        return finished(samples, Levels.ratio(noise.crestFactorDb()), Levels.rms(noise.levelDbfs()));
    }

    /** Cuts off what is left above the crest factor, which lowers the RMS value a little and so is done in turns. */
    private static NoiseSource finished(double[] samples, double crest, double rmsWanted) {
        for (int turn = 0; turn < 20 && peak(samples) > (1 + 1e-9) * crest * rms(samples); turn++) {
            cut(samples, crest * rms(samples));
        }
        double scale = rmsWanted / rms(samples);
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= scale;
        }
        return new NoiseSource(samples, peak(samples));
    }

    /** The heights of the lines: falling with the root of the frequency inside the band. */
    private static double[] heights(TestSignal.PinkNoise noise, double sampleRateHz, int periodFrames) {
        double[] heights = new double[periodFrames / 2];
        for (int k = 1; k < heights.length; k++) {
            double hertz = k * sampleRateHz / periodFrames;
            heights[k] = hertz >= noise.lowHz() && hertz <= noise.highHz() ? 1 / Math.sqrt(k) : 0;
        }
        return heights;
    }

    private static double[] randomPhases(double[] heights, long seed) {
        // The sequence of this class is laid down in its documentation, so a seed means the same noise everywhere.
        Random random = new Random(seed);
        double[] lines = new double[2 * heights.length];
        for (int k = 1; k < heights.length; k++) {
            double phase = 2 * Math.PI * random.nextDouble();
            lines[2 * k] = heights[k] * Math.cos(phase);
            lines[2 * k + 1] = heights[k] * Math.sin(phase);
        }
        return lines;
    }

    private static void straighten(double[] lines, double[] heights) {
        lines[0] = 0;
        lines[1] = 0;
        for (int k = 1; k < heights.length; k++) {
            double found = Math.hypot(lines[2 * k], lines[2 * k + 1]);
            double factor = found > 0 ? heights[k] / found : 0;
            lines[2 * k] *= factor;
            lines[2 * k + 1] *= factor;
        }
    }

    private static void cut(double[] samples, double limit) {
        for (int i = 0; i < samples.length; i++) {
            samples[i] = Math.max(-limit, Math.min(limit, samples[i]));
        }
    }

    private static double peak(double[] samples) {
        double peak = 0;
        for (double sample : samples) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return peak;
    }

    private static double rms(double[] samples) {
        double sum = 0;
        for (double sample : samples) {
            sum += sample * sample;
        }
        return Math.sqrt(sum / samples.length);
    }

    /** The highest sample, as a share of full scale. */
    double peak() {
        return peak;
    }

    int periodFrames() {
        return period.length;
    }

    @Override
    public void fill(long from, double[] block, int count) {
        int place = (int) (from % period.length);
        int done = 0;
        while (done < count) {
            int piece = Math.min(count - done, period.length - place);
            System.arraycopy(period, place, block, done, piece);
            done += piece;
            place = 0;
        }
    }
}
