// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** Makes waveforms: the stimuli of the bench, and test signals. */
public final class Waveforms {
    private Waveforms() {}

    /**
     * Returns a sine: peak * sin(2 pi f t + phase).
     *
     * @param sampleRateHz samples per second, above zero
     * @param size number of samples, at least one
     * @param frequencyHz below half the sample rate
     * @param voltsPeak amplitude
     * @param phaseRadians phase at the first sample
     * @throws IllegalArgumentException if a number is outside its range
     */
    public static Waveform sine(
            double sampleRateHz, int size, double frequencyHz, double voltsPeak, double phaseRadians) {
        requireSampled(sampleRateHz, size, frequencyHz);
        double[] samples = new double[size];
        for (int i = 0; i < size; i++) {
            samples[i] = voltsPeak * Math.sin(phaseRadians(frequencyHz, i, sampleRateHz) + phaseRadians);
        }
        return Waveform.wrap(sampleRateHz, samples);
    }

    /**
     * Returns a tone that runs on without a phase step while its level changes between two values, beginning with the
     * high one, as for dynamic headroom: 20 ms at 0 dB in each 500 ms, -20 dB in between.
     *
     * @param sampleRateHz samples per second, above zero
     * @param size number of samples, at least one
     * @param frequencyHz below half the sample rate
     * @param voltsPeak amplitude during the burst
     * @param pattern timing and low level
     * @throws IllegalArgumentException if a number is outside its range
     */
    public static Waveform toneBurst(
            double sampleRateHz, int size, double frequencyHz, double voltsPeak, BurstPattern pattern) {
        requireSampled(sampleRateHz, size, frequencyHz);
        double[] samples = new double[size];
        for (int i = 0; i < size; i++) {
            double level = pattern.isOn(i / sampleRateHz) ? voltsPeak : voltsPeak * pattern.lowRatio();
            samples[i] = level * Math.sin(phaseRadians(frequencyHz, i, sampleRateHz));
        }
        return Waveform.wrap(sampleRateHz, samples);
    }

    /**
     * Returns how far a tone that begins at phase zero has come at a sample: 2 pi f i / rate less whole turns. It is as good
     * hours after the beginning as at the first sample, because the turns are counted with twice the digits of a double.
     *
     * @param frequencyHz finite
     * @param index the sample, 0 for the first
     * @param sampleRateHz samples per second, above zero
     */
    public static double phaseRadians(double frequencyHz, long index, double sampleRateHz) {
        double perSample = frequencyHz / sampleRateHz;
        // What the quotient lost: frequency = perSample * rate + remainder, exactly.
        double lost = Math.fma(-perSample, sampleRateHz, frequencyHz) / sampleRateHz;
        double turns = perSample * index;
        double rest = Math.fma(perSample, index, -turns) + lost * index;
        return 2 * Math.PI * (turns - Math.floor(turns) + rest);
    }

    private static void requireSampled(double sampleRateHz, int size, double frequencyHz) {
        if (!Double.isFinite(sampleRateHz) || sampleRateHz <= 0 || size < 1) {
            throw new IllegalArgumentException("sampleRateHz must be finite and above 0 and size 1 or above, but are "
                    + sampleRateHz + " and " + size);
        }
        if (!(frequencyHz > 0) || frequencyHz >= sampleRateHz / 2) {
            throw new IllegalArgumentException(
                    "frequencyHz must be above 0 and below half of " + sampleRateHz + " Hz, but is " + frequencyHz);
        }
    }

    /**
     * The timing of a tone burst.
     *
     * @param onSeconds length of a burst, above zero and at most the period
     * @param periodSeconds time from burst to burst
     * @param lowRatio level between the bursts as a ratio of that in the burst, 0 (off) to 1; -20 dB is 0.1
     * @param delaySeconds when the first burst begins, 0 or above
     */
    public record BurstPattern(double onSeconds, double periodSeconds, double lowRatio, double delaySeconds) {
        /** Checks the ranges. */
        public BurstPattern {
            if (!(onSeconds > 0) || !(periodSeconds >= onSeconds) || !Double.isFinite(periodSeconds)) {
                throw new IllegalArgumentException(
                        "onSeconds must be above 0 and periodSeconds finite and not below it, but are " + onSeconds
                                + " and " + periodSeconds);
            }
            if (!(lowRatio >= 0 && lowRatio <= 1)) {
                throw new IllegalArgumentException("lowRatio must be 0 to 1, but is " + lowRatio);
            }
            if (!(delaySeconds >= 0) || !Double.isFinite(delaySeconds)) {
                throw new IllegalArgumentException(
                        "delaySeconds must be finite and 0 or above, but is " + delaySeconds);
            }
        }

        /** Returns whether the burst is on at a time in seconds from the first sample. */
        public boolean isOn(double timeSeconds) {
            // The small addition keeps a sample that falls on an edge on the right side of it despite rounding.
            double position = timeSeconds - delaySeconds + 1e-12;
            return position >= 0 && position - periodSeconds * Math.floor(position / periodSeconds) < onSeconds;
        }
    }
}
