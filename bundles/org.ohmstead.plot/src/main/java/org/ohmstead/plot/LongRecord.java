// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Samples taken at even distances, made ready to be thinned again and again, as when one zooms and pans over millions of them: where each
 * stretch of 32 is lowest and highest is found once. What comes out is the same as from {@link Decimation}, in a fraction of the time.
 * Immutable; the samples are not copied and must not be changed.
 */
public final class LongRecord {
    private static final int BLOCK = 32;

    private final double[] samples;
    /** Of each block where it is lowest and highest, and how low and high: memory is slow where it is read here and there. */
    private final int[] lowestAt;

    private final int[] highestAt;
    private final double[] lowest;
    private final double[] highest;

    private LongRecord(double[] samples) {
        this.samples = samples;
        int blocks = samples.length / BLOCK;
        lowestAt = new int[blocks];
        highestAt = new int[blocks];
        lowest = new double[blocks];
        highest = new double[blocks];
        for (int block = 0; block < blocks; block++) {
            int low = block * BLOCK;
            int high = low;
            for (int i = low; i < (block + 1) * BLOCK; i++) {
                Checks.finite("sample", samples[i]);
                low = samples[i] < samples[low] ? i : low;
                high = samples[i] > samples[high] ? i : high;
            }
            lowestAt[block] = low;
            highestAt[block] = high;
            lowest[block] = samples[low];
            highest[block] = samples[high];
        }
        for (int i = blocks * BLOCK; i < samples.length; i++) {
            Checks.finite("sample", samples[i]);
        }
    }

    /**
     * Goes through the samples once.
     *
     * @param samples each finite
     */
    public static LongRecord of(double[] samples) {
        return new LongRecord(Objects.requireNonNull(samples, "samples"));
    }

    /** Returns the number of samples. */
    public int size() {
        return samples.length;
    }

    /**
     * Returns what {@link Decimation#envelope(double, double, double[], int, int, int)} would: of each of {@code buckets} runs of nearly
     * equally many samples the lowest and the highest, with the first and the last of all; where that would save nothing, all.
     *
     * @param firstX place of the sample with index 0
     * @param stepX distance between two samples, above 0
     * @param from first index, 0 or more
     * @param to index after the last, at most {@link #size()}
     * @param buckets how many runs, 1 or more
     */
    public List<PlotPoint> envelope(double firstX, double stepX, int from, int to, int buckets) {
        if (to - (long) from <= 2L * buckets) {
            return Decimation.envelope(firstX, stepX, samples, from, to, buckets);
        }
        Decimation.check(firstX, stepX, samples.length, from, to, buckets);
        List<PlotPoint> kept = new ArrayList<>(2 * buckets + 2);
        int last = keep(kept, firstX, stepX, from, -1);
        Extremes extremes = new Extremes();
        int start = from;
        for (int i = 0; i < buckets; i++) {
            int end = from + (int) ((i + 1L) * (to - from) / buckets);
            extremes.find(start, end);
            last = keep(kept, firstX, stepX, Math.min(extremes.low, extremes.high), last);
            last = keep(kept, firstX, stepX, Math.max(extremes.low, extremes.high), last);
            start = end;
        }
        keep(kept, firstX, stepX, to - 1, last);
        return List.copyOf(kept);
    }

    private int keep(List<PlotPoint> kept, double firstX, double stepX, int index, int last) {
        if (index > last) {
            kept.add(new PlotPoint(firstX + index * stepX, samples[index]));
            return index;
        }
        return last;
    }

    /** Where a run is lowest and highest, the first place of each. */
    private final class Extremes {
        private int low;
        private int high;
        private double lowestSample;
        private double highestSample;

        void find(int from, int to) {
            low = from;
            high = from;
            lowestSample = samples[from];
            highestSample = samples[from];
            int firstBlock = (from + BLOCK - 1) / BLOCK;
            int endBlock = to / BLOCK;
            if (firstBlock >= endBlock) {
                take(from, to);
                return;
            }
            take(from, firstBlock * BLOCK);
            for (int block = firstBlock; block < endBlock; block++) {
                if (lowest[block] < lowestSample) {
                    low = lowestAt[block];
                    lowestSample = lowest[block];
                }
                if (highest[block] > highestSample) {
                    high = highestAt[block];
                    highestSample = highest[block];
                }
            }
            take(endBlock * BLOCK, to);
        }

        private void take(int from, int to) {
            for (int i = from; i < to; i++) {
                if (samples[i] < lowestSample) {
                    low = i;
                    lowestSample = samples[i];
                }
                if (samples[i] > highestSample) {
                    high = i;
                    highestSample = samples[i];
                }
            }
        }
    }
}
