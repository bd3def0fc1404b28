// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.lang.ref.SoftReference;
import java.util.Arrays;
import java.util.Locale;

/**
 * One channel of a capture: instantaneous volts at equally spaced instants. The first sample is at time zero. Instances
 * never change; every sample is finite.
 */
public final class Waveform {
    private final double sampleRateHz;
    private final double[] samples;
    /** Worked out when it is first wanted, and again when memory had run short. */
    private SoftReference<PlainSpectrum> plainSpectrum = new SoftReference<>(null);

    private Waveform(double sampleRateHz, double[] samples) {
        this.sampleRateHz = sampleRateHz;
        this.samples = samples;
    }

    /**
     * Returns a waveform of a copy of the given samples.
     *
     * @param sampleRateHz samples per second, finite and above zero
     * @param volts instantaneous volts, each finite, at least one
     * @throws IllegalArgumentException if the rate or a sample is outside these ranges
     */
    public static Waveform of(double sampleRateHz, double[] volts) {
        return wrap(sampleRateHz, volts.clone());
    }

    /** Takes the array over without a copy; the caller must not keep it. */
    static Waveform wrap(double sampleRateHz, double[] volts) {
        if (!Double.isFinite(sampleRateHz) || sampleRateHz <= 0) {
            throw new IllegalArgumentException("sampleRateHz must be finite and above 0, but is " + sampleRateHz);
        }
        if (volts.length == 0) {
            throw new IllegalArgumentException("volts must hold at least one sample, but is empty");
        }
        for (int i = 0; i < volts.length; i++) {
            if (!Double.isFinite(volts[i])) {
                throw new IllegalArgumentException("volts[" + i + "] must be finite, but is " + volts[i]);
            }
        }
        return new Waveform(sampleRateHz, volts);
    }

    /** Returns the number of samples per second, above zero. */
    public double sampleRateHz() {
        return sampleRateHz;
    }

    /** Returns the number of samples, at least one. */
    public int size() {
        return samples.length;
    }

    /** Returns the length in seconds: the number of samples divided by the sample rate. */
    public double durationSeconds() {
        return samples.length / sampleRateHz;
    }

    /**
     * Returns the instantaneous volts of one sample.
     *
     * @throws IndexOutOfBoundsException if the index is not within 0 to {@code size() - 1}
     */
    public double voltsAt(int index) {
        return samples[index];
    }

    /** Returns a copy of all samples in volts. */
    public double[] toArray() {
        return samples.clone();
    }

    /**
     * Returns the samples from one index (included) to another (excluded) as a waveform of its own.
     *
     * @throws IllegalArgumentException unless 0 &lt;= from &lt; to &lt;= size()
     */
    public Waveform slice(int from, int to) {
        if (from < 0 || to <= from || to > samples.length) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "from and to must satisfy 0 <= from < to <= %d, but are %d and %d",
                    samples.length,
                    from,
                    to));
        }
        return new Waveform(sampleRateHz, Arrays.copyOfRange(samples, from, to));
    }

    /** Takes over samples that are known to be finite. */
    static Waveform wrapFinite(double sampleRateHz, double[] volts) {
        return new Waveform(sampleRateHz, volts);
    }

    /** The transform of the samples, which are to be as many as {@link SmoothTransform} serves. */
    synchronized PlainSpectrum plainSpectrum() {
        PlainSpectrum spectrum = plainSpectrum.get();
        if (spectrum == null) {
            spectrum = PlainSpectrum.of(samples);
            plainSpectrum = new SoftReference<>(spectrum);
        }
        return spectrum;
    }

    /** The samples themselves, for reading only. */
    double[] raw() {
        return samples;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "Waveform of %d samples at %s Hz", samples.length, sampleRateHz);
    }
}
