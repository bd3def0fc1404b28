// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.List;
import java.util.Optional;
import org.ohmstead.signal.Waveform;

/**
 * A test signal at a sample rate: its samples, from any place and in any order, and what it is like. Never changes, and needs no memory for its
 * length.
 */
public final class Stimulus {
    /** The lowest and highest sample rate that is made. */
    private static final int LOWEST_RATE = 8_000;

    private static final int HIGHEST_RATE = 768_000;

    private final TestSignal signal;
    private final int sampleRateHz;
    private final boolean wholeCycles;
    private final Plan plan;

    /**
     * How a signal is made at a sample rate.
     *
     * @param source gives the samples
     * @param frames how many
     * @param facts what it is like
     * @param remarks what its user should know
     */
    record Plan(SampleSource source, long frames, StimulusFacts facts, List<StimulusRemark> remarks) {}

    private Stimulus(TestSignal signal, int sampleRateHz, boolean wholeCycles, Plan plan) {
        this.signal = signal;
        this.sampleRateHz = sampleRateHz;
        this.wholeCycles = wholeCycles;
        this.plan = plan;
    }

    /**
     * Makes a signal at a sample rate.
     *
     * @param signal what is wanted
     * @param sampleRateHz 8000 to 768000 samples per second
     * @param wholeCycles whether frequencies and lengths give way by a little, so that whole cycles fill the length and the signal can be
     *     played over and over without a step
     * @throws IllegalArgumentException if the rate is outside its range, or the signal reaches half of it; see {@link #whyNot}
     */
    public static Stimulus of(TestSignal signal, int sampleRateHz, boolean wholeCycles) {
        Checks.within("sampleRateHz", sampleRateHz, LOWEST_RATE, HIGHEST_RATE);
        if (signal.highestHz() >= 0.5 * sampleRateHz) {
            throw new IllegalArgumentException("the highest frequency must be below half of " + sampleRateHz
                    + " samples per second, but is " + signal.highestHz());
        }
        return new Stimulus(
                signal, sampleRateHz, wholeCycles, new StimulusPlanner(sampleRateHz, wholeCycles).plan(signal));
    }

    /** Returns why a signal cannot be made at a sample rate, or empty. */
    public static Optional<StimulusRemark> whyNot(TestSignal signal, int sampleRateHz) {
        return signal.highestHz() < 0.5 * sampleRateHz
                ? Optional.empty()
                : Optional.of(StimulusRemark.refusal("aboveHalfRate", signal.highestHz(), sampleRateHz));
    }

    /** Returns the signal that was asked for. */
    public TestSignal signal() {
        return signal;
    }

    /** Returns the number of samples per second. */
    public int sampleRateHz() {
        return sampleRateHz;
    }

    /** Returns whether frequencies and lengths gave way so that whole cycles fill the length. */
    public boolean wholeCycles() {
        return wholeCycles;
    }

    /** Returns the number of samples. */
    public long frames() {
        return plan.frames();
    }

    /** Returns the length in seconds. */
    public double durationSeconds() {
        return (double) plan.frames() / sampleRateHz;
    }

    /** Returns what it is like. */
    public StimulusFacts facts() {
        return plan.facts();
    }

    /** Returns what its user should know, the weightiest first; one that {@linkplain StimulusRemark#prevents prevents} keeps it from being made. */
    public List<StimulusRemark> remarks() {
        return plan.remarks();
    }

    /** Returns whether nothing keeps it from being written or played. */
    public boolean usable() {
        return plan.remarks().stream().noneMatch(StimulusRemark::prevents);
    }

    /**
     * Fills the beginning of a block with samples.
     *
     * @param from the first sample wanted
     * @param block takes shares of full scale
     * @param count how many
     * @throws IllegalArgumentException unless they all lie in the signal
     */
    public void read(long from, double[] block, int count) {
        if (from < 0 || count < 0 || from + count > plan.frames()) {
            throw new IllegalArgumentException(
                    "from and count must lie within " + plan.frames() + " samples, but are " + from + " and " + count);
        }
        plan.source().fill(from, block, count);
    }

    /**
     * Returns a part as a waveform in which one volt stands for full scale.
     *
     * @throws IllegalArgumentException unless it lies in the signal and holds a sample
     */
    public Waveform waveform(long from, int count) {
        double[] samples = new double[count];
        read(from, samples, count);
        return Waveform.of(sampleRateHz, samples);
    }
}
