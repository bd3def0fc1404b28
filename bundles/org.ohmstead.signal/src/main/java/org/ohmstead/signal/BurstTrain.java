// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The stretches of a record in which a tone is on, found from its mean square over a sliding window of about one cycle.
 * A stretch counts only if its edges are as steep as the window: a beat between two tones is no burst.
 */
final class BurstTrain {
    private static final int LEAST_WINDOW_SAMPLES = 12;
    private static final double ON_POWER_RATIO = 0.25;
    /** Blocks in a window, where a look at blocks may do. */
    private static final int BLOCKS = 4;

    private static final int LEAST_BLOCK = 4;
    private static final double SHORT_WINDOWS = 1.3;
    /** The beat of two close tones rises within a cycle or two as a burst does, but comes again within a few cycles. */
    private static final double LEAST_PERIOD_WINDOWS = 14;

    private static final double FIT_MARGIN_CYCLES = 0.1;
    private static final double LEAST_FIT_CYCLES = 0.75;
    private static final double MOST_FIT_CYCLES = 4;
    private static final double LEAST_CHANGE = 0.005;
    private static final double MOST_CHANGE = 0.25;

    private final List<Stretch> stretches;
    private final OptionalDouble periodSamples;

    private BurstTrain(List<Stretch> stretches, OptionalDouble periodSamples) {
        this.stretches = stretches;
        this.periodSamples = periodSamples;
    }

    /**
     * A stretch with the tone on, in samples from the first of the record.
     *
     * @param from where it begins, or 0 if the record begins inside it
     * @param to where it ends, or the length of the record if that ends inside it
     * @param whole true if both edges lie in the record
     */
    record Stretch(double from, double to, boolean whole) {
        double length() {
            return to - from;
        }
    }

    /**
     * Looks for bursts.
     *
     * @param samples the record, its mean taken off
     * @param periodSamples samples per cycle of the tone
     * @return the stretches in order; none if the tone does not come in bursts
     */
    static BurstTrain of(double[] samples, double periodSamples) {
        BurstTrain none = new BurstTrain(List.of(), OptionalDouble.empty());
        int window = windowFor(periodSamples);
        if (samples.length < 3 * window) {
            return none;
        }
        double[] squares = slidingSquares(samples, window);
        double highest = Arrays.stream(squares).max().orElse(0);
        double threshold = ON_POWER_RATIO * highest;
        List<int[]> runs = runsAbove(squares, threshold, window);
        boolean steady = runs.size() == 1 && runs.get(0)[0] == 0 && runs.get(0)[1] == squares.length;
        if (runs.isEmpty() || steady) {
            return none;
        }
        List<Stretch> found = new ArrayList<>();
        for (int[] run : runs) {
            Stretch stretch = stretch(samples, squares, run, window);
            if (Double.isNaN(stretch.from()) || Double.isNaN(stretch.to())) {
                return none;
            }
            found.add(stretch);
        }
        OptionalDouble period = period(found, samples.length);
        boolean beat = found.size() > 2 && period.orElse(Double.MAX_VALUE) < LEAST_PERIOD_WINDOWS * window;
        return beat ? none : new BurstTrain(List.copyOf(found), period);
    }

    /**
     * The frequency of the tone if the spectrum of the record tells it badly: a burst of a cycle or two with nothing in
     * between has its strongest component up to a tenth beside its frequency. A sine fitted to the longest burst is
     * believed if it lies well apart and follows the burst much better.
     *
     * @param samples the record, its mean taken off
     * @param radiansPerSample the frequency of the strongest component
     */
    double refinedRadians(double[] samples, double radiansPerSample) {
        double period = 2 * Math.PI / radiansPerSample;
        Stretch longest = stretches.stream()
                .max((a, b) -> Double.compare(a.length(), b.length()))
                .orElseThrow();
        int from = (int) Math.ceil(longest.from() + FIT_MARGIN_CYCLES * period);
        int to = (int) Math.min(samples.length, Math.floor(longest.to() - FIT_MARGIN_CYCLES * period));
        boolean fittable = to - from >= Math.max(LEAST_WINDOW_SAMPLES, LEAST_FIT_CYCLES * period);
        if (!fittable || longest.length() > MOST_FIT_CYCLES * period) {
            return radiansPerSample;
        }
        double[] inside = Arrays.copyOfRange(samples, from, to);
        // At a rate of 2 pi a frequency is in radians per sample.
        double rate = 2 * Math.PI;
        SineFit plain;
        SineFit fit;
        try {
            plain = SineFit.threeParameter(inside, rate, radiansPerSample);
            fit = SineFit.fourParameter(inside, rate, radiansPerSample);
        } catch (IllegalArgumentException e) {
            return radiansPerSample;
        }
        double change = Math.abs(fit.frequencyHz() / radiansPerSample - 1);
        boolean better = fit.residualVoltsRms() < 0.5 * plain.residualVoltsRms();
        return better && change > LEAST_CHANGE && change < MOST_CHANGE ? fit.frequencyHz() : radiansPerSample;
    }

    /** Samples of the sliding window: about a cycle. */
    private static int windowFor(double periodSamples) {
        double periods = Math.max(1, Math.ceil(LEAST_WINDOW_SAMPLES / periodSamples));
        return (int) Math.max(2, Math.rint(periods * periodSamples));
    }

    private static Stretch stretch(double[] samples, double[] squares, int[] run, int window) {
        double from = run[0] == 0 ? 0 : edge(squares, run[0], 1, window);
        double to = run[1] == squares.length ? samples.length : edge(squares, run[1] - 1, -1, window);
        Stretch stretch = new Stretch(from, to, run[0] > 0 && run[1] < squares.length);
        return stretch.length() < SHORT_WINDOWS * window ? shortened(samples, squares, stretch, window) : stretch;
    }

    /**
     * A burst shorter than the window looks as long as the window; its samples tell whether it fills one cycle. If so
     * the stretch is right as it is, if not it becomes the part between the outermost samples above a level.
     */
    private static Stretch shortened(double[] samples, double[] squares, Stretch stretch, int window) {
        int first = clamp((int) Math.floor(stretch.from()) - window / 2, samples.length);
        int last = clamp((int) Math.ceil(stretch.to()) + window / 2, samples.length);
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        double peak = 0;
        for (int i = first; i <= last; i++) {
            peak = Math.max(peak, Math.abs(samples[i]));
        }
        for (int i = clamp(first - window, squares.length); i <= clamp(last, squares.length); i++) {
            low = Math.min(low, squares[i]);
            high = Math.max(high, squares[i]);
        }
        double ratio = Math.min(0.9, 0.2 + Math.sqrt(low / high));
        while (first < last && Math.abs(samples[first]) < ratio * peak) {
            first++;
        }
        while (last > first && Math.abs(samples[last]) < ratio * peak) {
            last--;
        }
        // A whole cycle of a sine is above the level for all but asin(ratio) / pi of it.
        double whole = (1 - Math.asin(ratio) / Math.PI) * window;
        if (last - first >= whole - 0.08 * window) {
            return stretch;
        }
        // An edge that the record does not hold stays where the record ends.
        double from = stretch.from() > 0 ? first : stretch.from();
        return new Stretch(from, stretch.to() < samples.length ? last : stretch.to(), stretch.whole());
    }

    /**
     * Whether a record that holds a tone holds it all the time, as {@link #of} would find, without keeping anything.
     *
     * @param samples the record
     * @param mean the mean of the samples
     * @param periodSamples samples per cycle of the tone
     */
    static boolean isSteady(double[] samples, double mean, double periodSamples) {
        int window = windowFor(periodSamples);
        if (samples.length < 3 * window) {
            return true;
        }
        if (isSurelySteady(samples, mean, window)) {
            return true;
        }
        double sum = 0;
        for (int i = 0; i < window; i++) {
            sum += (samples[i] - mean) * (samples[i] - mean);
        }
        double lowest = sum;
        double highest = sum;
        for (int i = window; i < samples.length; i++) {
            double in = samples[i] - mean;
            double out = samples[i - window] - mean;
            sum += in * in - out * out;
            if (sum < lowest) {
                lowest = sum;
            } else if (sum > highest) {
                highest = sum;
            }
        }
        return lowest > ON_POWER_RATIO * highest;
    }

    /**
     * Whether the power of blocks tells already: wherever the window lies, it covers all blocks but two of those that it touches, so its
     * power lies between theirs.
     */
    private static boolean isSurelySteady(double[] samples, double mean, int window) {
        int block = window / BLOCKS;
        if (block < LEAST_BLOCK) {
            return false;
        }
        int whole = samples.length / block;
        double[] squares = new double[whole + 1];
        for (int b = 0; b < squares.length; b++) {
            squares[b] = Sums.withSquares(samples, b * block, Math.min(samples.length, (b + 1) * block), mean)[1];
        }
        // Of the window, that many blocks lie whole within it at least, and no more are touched.
        int within = window / block - 1;
        int touched = (window + block - 1) / block + 1;
        double lowest = Double.POSITIVE_INFINITY;
        double highest = 0;
        for (int b = 0; b + touched <= squares.length; b++) {
            highest = Math.max(highest, Sums.of(squares, b, b + touched));
        }
        for (int b = 0; b + within <= whole; b++) {
            lowest = Math.min(lowest, Sums.of(squares, b, b + within));
        }
        return lowest > ON_POWER_RATIO * highest;
    }

    private static double[] slidingSquares(double[] samples, int window) {
        double[] sums = new double[samples.length + 1];
        for (int i = 0; i < samples.length; i++) {
            sums[i + 1] = sums[i] + samples[i] * samples[i];
        }
        double[] squares = new double[samples.length - window + 1];
        for (int i = 0; i < squares.length; i++) {
            squares[i] = (sums[i + window] - sums[i]) / window;
        }
        return squares;
    }

    /** Index ranges (end excluded) above the threshold; gaps and runs shorter than half a window do not count. */
    private static List<int[]> runsAbove(double[] squares, double threshold, int window) {
        List<int[]> runs = new ArrayList<>();
        int start = -1;
        for (int i = 0; i <= squares.length; i++) {
            boolean on = i < squares.length && squares[i] > threshold;
            if (on && start < 0) {
                start = i;
            } else if (!on && start >= 0) {
                addRun(runs, start, i, window);
                start = -1;
            }
        }
        runs.removeIf(run -> run[1] - run[0] < window / 2);
        return runs;
    }

    private static void addRun(List<int[]> runs, int start, int end, int window) {
        int last = runs.size() - 1;
        if (last >= 0 && start - runs.get(last)[1] < window / 2) {
            runs.get(last)[1] = end;
        } else {
            runs.add(new int[] {start, end});
        }
    }

    /**
     * Where the tone goes on or off near an index: the middle of the window that has half of the step in it. NaN if
     * the step is not a steep one.
     */
    private static double edge(double[] squares, int index, int inward, int window) {
        // At the threshold a quarter of the window is filled: the level is full three quarters further in.
        int inside = clamp(index + inward * (int) Math.ceil(0.8 * window), squares.length);
        int outside = clamp(index - inward * (int) Math.ceil(0.4 * window), squares.length);
        double high = squares[inside];
        for (int i = index; i != inside; i += inward) {
            high = Math.max(high, squares[i]);
        }
        double low = squares[outside];
        if (squares[index] > 0 && low > 0.4 * high) {
            return Double.NaN;
        }
        // A burst of one cycle fills the window at one place only, so the high level is the largest nearby.
        double middle = 0.5 * (high + low);
        int i = outside;
        while (i != inside && squares[clamp(i + inward, squares.length)] < middle) {
            i += inward;
        }
        int next = clamp(i + inward, squares.length);
        double rise = squares[next] - squares[i];
        double part = rise > 0 ? (middle - squares[i]) / rise : 0;
        return i + inward * Math.max(0, Math.min(1, part)) + 0.5 * window;
    }

    private static int clamp(int index, int size) {
        return Math.max(0, Math.min(size - 1, index));
    }

    private static OptionalDouble period(List<Stretch> stretches, int size) {
        List<Double> rising = new ArrayList<>();
        List<Double> falling = new ArrayList<>();
        for (Stretch stretch : stretches) {
            if (stretch.from() > 0) {
                rising.add(stretch.from());
            }
            if (stretch.to() < size) {
                falling.add(stretch.to());
            }
        }
        List<Double> edges = rising.size() >= falling.size() ? rising : falling;
        if (edges.size() < 2) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of((edges.get(edges.size() - 1) - edges.get(0)) / (edges.size() - 1));
    }

    boolean isEmpty() {
        return stretches.isEmpty();
    }

    List<Stretch> stretches() {
        return stretches;
    }

    OptionalDouble periodSamples() {
        return periodSamples;
    }
}
